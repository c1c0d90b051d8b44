package boardside.engine.odds;

import boardside.engine.rules.Game;
import boardside.engine.rules.GameRules;

/**
 * A race solved: the chance to win and the expected rounds from every score, whoever throws first. A finite absorbing
 * Markov chain (Feller, An Introduction to Probability Theory and Its Applications, vol. 1, XV.8; where one point moves a
 * round it is the problem of points, VI.8). Immutable.
 */
public final class Race {
    /** Highest target that is solved where it must be hit exactly; the work grows with its third power, and more. */
    public static final int MOST_EXACT = 200;

    private final GameRules rules;
    private final RaceTable meFirst;
    private final RaceTable theyFirst;
    private final String endless;

    private Race(GameRules rules, ScoringRound meFirst, ScoringRound theyFirst) {
        RaceTable[] tables = rules.exact()
                ? new ExactRace(rules, meFirst, theyFirst).solve()
                : new ForwardRace(rules, meFirst, theyFirst).solve();
        this.rules = rules;
        this.meFirst = tables[0];
        this.theyFirst = tables[1];
        this.endless = meFirst.never() || theyFirst.never()
                ? "both sides can come to make the same points every round, so that nobody ever scores again"
                : "an exact " + rules.target() + " may never be hit with the points that can be made";
    }

    /**
     * Solves a race in which a round is the same whoever throws first.
     *
     * @throws IllegalArgumentException if the target is to be hit exactly and lies above
     *     {@link #MOST_EXACT}
     */
    public static Race solve(GameRules rules, NetDistribution net) {
        ScoringRound round = ScoringRound.of(net);
        return new Race(rules, round, round);
    }

    /**
     * Solves a race between two sides that throw independently of each other.
     *
     * @throws IllegalArgumentException if the target is to be hit exactly and lies above
     *     {@link #MOST_EXACT}
     */
    public static Race solve(GameRules rules, RoundDistribution mine, RoundDistribution theirs) {
        return solve(rules, NetDistribution.between(mine, theirs));
    }

    /**
     * Solves a race in which it matters who throws first.
     *
     * @param meFirst a round in which the first side throws first
     * @param theyFirst a round in which the other side does, seen from the first side all the same
     * @throws IllegalArgumentException if the target is to be hit exactly and lies above
     *     {@link #MOST_EXACT}
     */
    public static Race solve(GameRules rules, NetDistribution meFirst, NetDistribution theyFirst) {
        return new Race(
                rules,
                ScoringRound.of(meFirst, theyFirst, rules.firstThrow()),
                ScoringRound.of(theyFirst, meFirst, rules.firstThrow()));
    }

    /** How the race is won. */
    public GameRules rules() {
        return rules;
    }

    /**
     * The answer from a score.
     *
     * @param mine points of the first side
     * @param theirs points of the other side
     * @param meFirst whether the first side throws first in the next round
     * @throws IllegalArgumentException if the score cannot be, or the race is over at it
     */
    public RaceAnswer from(int mine, int theirs, boolean meFirst) {
        RaceTable table = meFirst ? this.meFirst : theyFirst;
        int at = position(table, mine, theirs);
        double never = table.never() == null ? 0 : table.never()[at];
        return never > 0
                ? new RaceAnswer.Endless(table.win()[at], never, endless)
                : new RaceAnswer.Ends(table.win()[at], table.rounds()[at]);
    }

    /** The answer from 0-0, the first side to throw first. */
    public RaceAnswer fromStart() {
        return from(0, 0, true);
    }

    /**
     * The chance that the first side wins, plus half the chance that nobody ever does.
     *
     * @throws IllegalArgumentException if the score cannot be, or the race is over at it
     */
    public double winOrHalf(int mine, int theirs, boolean meFirst) {
        RaceTable table = meFirst ? this.meFirst : theyFirst;
        return table.win()[position(table, mine, theirs)];
    }

    private int position(RaceTable table, int mine, int theirs) {
        int last = rules.target() - 1;
        if (!(mine >= 0 && theirs >= 0 && mine <= last && theirs <= last)) {
            throw new IllegalArgumentException("a race to " + rules.target() + " is open at scores from 0 to " + last
                    + ", not at " + mine + "-" + theirs);
        }
        if (rules.won(mine, theirs) || rules.won(theirs, mine)) {
            throw new IllegalArgumentException("the race is over at " + mine + "-" + theirs + ", by a skunk of "
                    + rules.skunk() + " to nil; start from a score at which it is open");
        }
        return mine * table.stride() + theirs;
    }

    /** The value of a game to its first side: 1 won, 0 lost, else the chance to win plus half that of no end. */
    public double value(Game game) {
        return switch (game.result()) {
            case WON -> 1;
            case LOST -> 0;
            case OPEN -> winOrHalf(game.mine(), game.theirs(), game.meFirst());
        };
    }
}
