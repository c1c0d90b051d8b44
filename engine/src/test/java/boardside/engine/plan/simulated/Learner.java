package boardside.engine.plan.simulated;

import boardside.engine.odds.BagChances;
import boardside.engine.odds.Race;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.plan.Ability;
import boardside.engine.plan.Block;
import boardside.engine.plan.Due;
import boardside.engine.plan.Habits;
import boardside.engine.plan.PlayerState;
import boardside.engine.plan.Rival;
import boardside.engine.plan.Tried;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.GameRules;
import boardside.engine.skill.ChanceRange;
import boardside.engine.skill.Interval;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;

/**
 * A player who learns. The law is a model, of the same shapes as the plan's (law of practice, an optimum of difficulty,
 * wearing off in a row, spacing, tiring) but with numbers of the player's own that the plan never sees: how fast each skill
 * comes, what each drill lends to which skill, how soon bags wear off and legs tire, how far drills for the same skill wear each
 * other off (the plan takes it that they do not), what coming back to a drill adds, and that part of what was learned is
 * forgotten again. What the plan is told are chances and rates with errors, as records would give them.
 */
final class Learner {
    /** Kept bags in; bags kept; the same in a game; a block; a push; an airmail. */
    private static final int FINISH = 0;

    private static final int CONTROL = 1;
    private static final int PRESSURE = 2;
    private static final int SHOTS = 3;
    private static final int SKILLS = 6;
    private static final List<String> SHOT = List.of("block", "push", "airmail");
    private static final double[] CALLED = {0.08, 0.10, 0.06};

    /** What a bag of each choice teaches of finish, control, pressure, before the player's own deviations. */
    private static final Map<String, double[]> LENDS = Map.of(
            "volume", new double[] {1, 0.5, 0},
            "total:aggressive", new double[] {0.9, 0.7, 0},
            "total:conservative", new double[] {0.4, 1, 0},
            "total:narrow", new double[] {0.4, 1.2, 0},
            "race", new double[] {0.5, 0.5, 1},
            "climb", new double[] {0.5, 0.5, 1});

    private final Random random;
    private final double[] skill = new double[SKILLS];
    private final double[] learned = new double[SKILLS];
    private final double[] bags = new double[SKILLS];
    private final double[] last = new double[SKILLS];
    private final double[] speed = new double[SKILLS];
    private final Map<String, double[]> lends = new HashMap<>();
    private final double wearsOff;
    private final double stamina;
    private final double sameDay;
    private final double forgets;
    private final double closes;
    private final double[] shotTries = new double[SHOT.size()];
    private final double[] shotWorked = new double[SHOT.size()];
    private final int ghost;
    private final double startFinish;
    private final double startControl;
    private final double[] startShots = new double[SHOT.size()];
    private final double perBag;
    private final Map<String, Double> thrownToday = new HashMap<>();
    private final double others;
    private final double mixing;
    private String before = "";
    private double tired;

    Learner(long seed) {
        random = new Random(seed);
        skill[FINISH] = -0.9 + 1.8 * random.nextDouble();
        skill[CONTROL] = 0.6 + 1.6 * random.nextDouble();
        // Logits lost in a game.
        skill[PRESSURE] = -0.3 * random.nextDouble();
        double before = Math.exp(Math.log(500) + random.nextDouble() * Math.log(40));
        for (int k = 0; k < SKILLS; k++) {
            speed[k] = Math.exp(0.5 * random.nextGaussian());
            bags[k] = k < SHOTS ? before : before * 0.1 * random.nextDouble();
            last[k] = -1 - random.nextInt(k < SHOTS ? 4 : 40);
        }
        for (int s = 0; s < SHOT.size(); s++) {
            skill[SHOTS + s] = -1.8 + 2.4 * random.nextDouble();
            startShots[s] = rate(s);
            shotTries[s] = Math.floor(bags[SHOTS + s] / 4);
            shotWorked[s] = binomial((int) shotTries[s], rate(s));
        }
        LENDS.forEach((choice, usual) -> lends.put(
                choice,
                Arrays.stream(usual)
                        .map(one -> one * (0.6 + 0.8 * random.nextDouble()))
                        .toArray()));
        wearsOff = 50 + 100 * random.nextDouble();
        stamina = 40 + 60 * random.nextDouble();
        sameDay = 0.3 + 0.5 * random.nextDouble();
        forgets = 0.02 * random.nextDouble();
        others = 0.2 + 0.6 * random.nextDouble();
        mixing = 0.2 * random.nextDouble();
        closes = 800 + 1600 * random.nextDouble();
        startFinish = skill[FINISH];
        startControl = skill[CONTROL];
        ghost = (int) Math.round(level());
        BagChances now = game();
        double more = race(new BagChances(Math.min(1, now.in() + 0.01), Math.max(0, now.on() - 0.01))) - race(now);
        perBag = more / 0.01;
    }

    private static double logistic(double logit) {
        return 1 / (1 + Math.exp(-logit));
    }

    private double rate(int shot) {
        return logistic(skill[SHOTS + shot]);
    }

    private int binomial(int n, double p) {
        int k = 0;
        for (int i = 0; i < n; i++) {
            k += random.nextDouble() < p ? 1 : 0;
        }
        return k;
    }

    private BagChances chances(double shift) {
        double kept = logistic(skill[CONTROL] + shift);
        double in = kept * logistic(skill[FINISH] + shift);
        return new BagChances(in, kept - in);
    }

    private BagChances game() {
        return chances(skill[PRESSURE]);
    }

    private double race(BagChances bag) {
        return Race.solve(GameRules.STANDARD, RoundDistribution.of(bag), RoundDistribution.ghost(ghost))
                .winOrHalf(0, 0, true);
    }

    private double level() {
        double best = 1;
        int found = 0;
        for (int points = 0; points <= 12; points++) {
            double win = Race.solve(
                            GameRules.STANDARD, RoundDistribution.of(chances(0)), RoundDistribution.ghost(points))
                    .winOrHalf(0, 0, true);
            if (Math.abs(win - 0.5) < best) {
                best = Math.abs(win - 0.5);
                found = points;
            }
        }
        return found;
    }

    /**
     * The chance of winning a race against the ghost that was at the player's level at first, with what better shots add: in the
     * share of bags that call for each, a shot that works instead of not is worth a bag in instead of on.
     */
    double win() {
        double shots = 0;
        for (int s = 0; s < SHOT.size(); s++) {
            shots += CALLED[s] * perBag * (rate(s) - startShots[s]);
        }
        return Math.min(1, Math.max(0, race(game()) + shots));
    }

    /** What records would tell of the player on a day. */
    PlayerState told(double day) {
        BagChances now = chances(0);
        double in = Math.min(0.98, Math.max(0.02, now.in() + 0.02 * random.nextGaussian()));
        double on = Math.min(1 - in, Math.max(0, now.on() + 0.02 * random.nextGaussian()));
        BagChances likely = new BagChances(in, on);
        List<Tried> targets = List.of(tried(0, day, "2-middle"));
        List<Tried> shots = List.of(tried(1, day, "push"), tried(2, day, "airmail"));
        return new PlayerState(
                new PlayerState.Form(
                        Optional.of(new ChanceRange(
                                likely,
                                new BagChances(Math.max(0, in - 0.03), on),
                                new BagChances(Math.min(1 - on, in + 0.03), on))),
                        ability(FINISH, day, 0.1),
                        ability(CONTROL, day, 0.1),
                        ability(PRESSURE, day, 0.3),
                        Optional.of(lost()),
                        Optional.empty()),
                List.of(Rival.ghost(ghost)),
                targets,
                shots,
                new Due(Optional.empty(), Optional.empty(), new Due.Boards(0, false)),
                Habits.NONE,
                Set.of(),
                Map.of());
    }

    /** Points a round lost in games, as league nights would tell: with an error. */
    private Interval lost() {
        double lost = chances(0).pointsPerRound() - game().pointsPerRound() + 0.25 * random.nextGaussian();
        return new Interval(lost, lost - 0.4, lost + 0.4);
    }

    private Ability ability(int k, double day, double uncertainty) {
        return new Ability(bags[k], day - last[k], uncertainty, 1);
    }

    private Tried tried(int shot, double day, String id) {
        // A beta posterior, from 1.5 worked of 5.
        double worked = shotWorked[shot] + 1.5;
        double missed = shotTries[shot] - shotWorked[shot] + 3.5;
        double mean = worked / (worked + missed);
        double sd = Math.sqrt(mean * (1 - mean) / (worked + missed + 1));
        return new Tried(
                id,
                SHOT.get(shot),
                id,
                BoardKind.REGULATION,
                new Interval(mean, Math.max(0, mean - 1.64 * sd), Math.min(1, mean + 1.64 * sd)),
                (long) shotTries[shot],
                ability(SHOTS + shot, day, sd / (mean * (1 - mean))));
    }

    /** Throws a session. */
    void practise(List<Block> blocks, double day) {
        boolean warm = false;
        tired = 0;
        thrownToday.clear();
        double[] today = new double[SKILLS];
        for (Block block : blocks) {
            switch (block.activity()) {
                case BREAK -> tired = 0;
                case WARM_UP -> warm = true;
                default -> {
                    learn(block, day, warm, today);
                    thrownToday.merge(block.choice(), (double) block.throwsPlanned(), Double::sum);
                    tired += block.minutes();
                }
            }
        }
        for (int k = 0; k < SKILLS; k++) {
            if (today[k] > 0) {
                last[k] = day;
            }
        }
    }

    private void learn(Block block, double day, boolean warm, double[] today) {
        double again = thrown(block.choice()) > 0 && !block.choice().equals(before) ? 1 + mixing : 1;
        before = block.choice();
        double fresh =
                again * Math.exp(-0.5 * Math.pow((tired + block.minutes() / 2.0) / stamina, 2)) * (warm ? 1 : 0.88);
        int shot = shot(block.choice());
        if (shot >= 0) {
            step(block, SHOTS + shot, fresh * challenge(rate(shot)), day, today);
            shotTries[shot] += block.throwsPlanned();
            shotWorked[shot] += binomial(block.throwsPlanned(), rate(shot));
            return;
        }
        double[] lent = lends.get(block.choice());
        if (lent == null) {
            return;
        }
        double asked = block.choice().equals("volume") ? challenge(chances(0).in()) : 1;
        for (int k = 0; k < SHOTS; k++) {
            if (lent[k] > 0) {
                step(block, k, fresh * asked * lent[k], day, today);
            }
        }
    }

    private static int shot(String choice) {
        return choice.startsWith("placement") ? 0 : choice.endsWith("push") ? 1 : choice.endsWith("airmail") ? 2 : -1;
    }

    private static double challenge(double success) {
        double off = success > 2.0 / 3 ? success - 2.0 / 3 : Math.max(0, 0.5 - success);
        return Math.exp(-0.5 * Math.pow(off / 0.25, 2));
    }

    private double thrown(String choice) {
        return thrownToday.getOrDefault(choice, 0.0);
    }

    private void step(Block block, int k, double weight, double day, double[] today) {
        int thrown = block.throwsPlanned();
        // Other drills for the same skill wear it off as well, but less.
        double same = thrown(block.choice());
        double already = same + others * (today[k] - same);
        double worth = wearsOff * (Math.exp(-already / wearsOff) - Math.exp(-(already + thrown) / wearsOff));
        double gap = Math.min(1, (day - last[k]) / 5);
        double spaced = sameDay + (1 - sameDay) * gap;
        // What is lost in games closes by a share of it; nobody throws better in a game than in practice.
        double gain = k == PRESSURE
                ? -skill[k] * Math.min(1, speed[k] * weight * worth * spaced / closes)
                : speed[k] * 0.5 / (1000 + bags[k]) * weight * worth * spaced;
        learned[k] += gain;
        skill[k] += gain;
        bags[k] += thrown;
        today[k] += thrown;
    }

    /** Part of what was learned goes again, overnight. */
    void sleep() {
        for (int k = 0; k < SKILLS; k++) {
            skill[k] -= forgets * learned[k];
            learned[k] *= 1 - forgets;
        }
    }

    /** How far form has come, logits: for telling that the made-up player is of this world. */
    double[] came() {
        return new double[] {skill[FINISH] - startFinish, skill[CONTROL] - startControl};
    }
}
