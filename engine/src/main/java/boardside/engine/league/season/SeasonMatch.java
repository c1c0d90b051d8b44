package boardside.engine.league.season;

import boardside.engine.league.GameTotals;
import boardside.engine.league.MatchResult.Award;
import boardside.engine.rules.Word;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A match of a season. Sides are entrants' ids.
 *
 * @param id unique in the season
 * @param stage in the round robin or the play-off
 * @param division index of the division; 0 in the play-off
 * @param week of the season, or round of the play-off, 1 or more
 * @param place within the week, or the round, 1 or more
 * @param extended when it closes, as the season's clocks show it, where that was put off; else null
 * @param state how far it is
 * @param games totals by game, game 1 first; shorter where the later ones are not known
 * @param said who has said that these totals are right: none, one, or both of the players
 * @param forfeit who is given the games that were not thrown; null unless it was forfeited
 * @param firstSubstitute who threw for the side named first, or empty
 * @param secondSubstitute who threw for the other side, or empty
 * @param headStart points the side named first is given in each game; negative, the other side
 * @param note what is to be known of it, such as what a dispute is about
 */
public record SeasonMatch(
        String id,
        Stage stage,
        int division,
        int week,
        int place,
        String first,
        String second,
        @Nullable LocalDateTime extended,
        State state,
        List<GameScore> games,
        Said said,
        @Nullable Award forfeit,
        String firstSubstitute,
        String secondSubstitute,
        int headStart,
        String note) {
    /** The two parts of a season. */
    public enum Stage implements Word {
        LEAGUE,
        PLAY_OFF
    }

    /** How far a match is. */
    public enum State implements Word {
        /** Games are still to be thrown, or their totals to be told. */
        OPEN,
        /** All totals are told, and somebody is still to say that they are right. */
        REPORTED,
        /** Both players, or the organiser, have said so: it counts. */
        CONFIRMED,
        /** One player says that they are wrong: the organiser decides. */
        DISPUTED,
        /** Games that were not thrown went by forfeit: it counts. */
        FORFEITED
    }

    /** Which players have said that the totals are right. */
    public enum Said implements Word {
        NOBODY,
        FIRST,
        SECOND,
        BOTH;

        /** With one more who says so. */
        Said and(Voice voice) {
            Said one = voice == Voice.FIRST ? FIRST : SECOND;
            return this == NOBODY || this == one ? one : BOTH;
        }
    }

    /** Checked; games after the last known total are left out. */
    public SeasonMatch {
        if (id.isBlank() || first.isBlank() || second.isBlank() || first.equals(second)) {
            throw new IllegalArgumentException(
                    "a match has an id and two players, not \"" + first + "\" and \"" + second + "\"");
        }
        if (!(week >= 1 && place >= 1 && division >= 0)) {
            throw new IllegalArgumentException("weeks and places are numbered from 1, not " + week + " and " + place);
        }
        if ((state == State.FORFEITED) != (forfeit != null)) {
            throw new IllegalArgumentException("a match that is forfeited says by whom, and no other does");
        }
        int known = games.size();
        while (known > 0 && games.get(known - 1).equals(GameScore.NONE)) {
            known--;
        }
        games = List.copyOf(games.subList(0, known));
    }

    /** A match nothing has been thrown of. */
    static SeasonMatch open(String id, Stage stage, int division, int week, int place, String first, String second) {
        return new SeasonMatch(
                id,
                stage,
                division,
                week,
                place,
                first,
                second,
                null,
                State.OPEN,
                List.of(),
                Said.NOBODY,
                null,
                "",
                "",
                0,
                "");
    }

    /** What is known of a game, numbered from 1. */
    public GameScore game(int number) {
        return number <= games.size() ? games.get(number - 1) : GameScore.NONE;
    }

    /** Whether an entrant is one of the two. */
    public boolean has(String entrant) {
        return first.equals(entrant) || second.equals(entrant);
    }

    /** Who is on the other side of an entrant. */
    public String against(String entrant) {
        return first.equals(entrant) ? second : first;
    }

    /** Whether it counts: confirmed or forfeited. */
    public boolean fixed() {
        return state == State.CONFIRMED || state == State.FORFEITED;
    }

    /** Whether all totals of so many games are known. */
    public boolean complete(int number) {
        return games.size() == number && games.stream().allMatch(GameScore::complete);
    }

    /** How many of so many games a side has thrown. */
    public int thrown(String entrant, int number) {
        int thrown = 0;
        for (int game = 1; game <= number; game++) {
            GameScore score = game(game);
            thrown += (first.equals(entrant) ? score.first() : score.second()) != null ? 1 : 0;
        }
        return thrown;
    }

    /** Games with both totals. */
    public List<GameTotals> totals() {
        List<GameTotals> totals = new ArrayList<>();
        for (GameScore game : games) {
            Integer one = game.first();
            Integer other = game.second();
            if (one != null && other != null) {
                totals.add(new GameTotals(one, other, headStart));
            }
        }
        return totals;
    }

    /** The same with other totals, as told by somebody; what others had said of the earlier totals no longer holds. */
    SeasonMatch told(List<GameScore> totals, Voice by, int number) {
        SeasonMatch told = with(State.OPEN, totals, Said.NOBODY, null, note);
        if (!told.complete(number)) {
            return told;
        }
        return by == Voice.ORGANISER
                ? told.with(State.CONFIRMED, totals, Said.NOBODY, null, note)
                : told.with(State.REPORTED, totals, Said.NOBODY.and(by), null, note);
    }

    /** The same after somebody has said that the totals are right. */
    SeasonMatch confirmed(Voice by) {
        Said now = by == Voice.ORGANISER ? said : said.and(by);
        return with(
                by == Voice.ORGANISER || now == Said.BOTH ? State.CONFIRMED : State.REPORTED, games, now, null, note);
    }

    /** The same after somebody has said that the totals are wrong. */
    SeasonMatch disputed(String why) {
        return with(State.DISPUTED, games, Said.NOBODY, null, why);
    }

    /** The same with the games that were not thrown given away. */
    SeasonMatch forfeited(Award to) {
        return with(State.FORFEITED, games, said, to, note);
    }

    /** The same, open again. */
    SeasonMatch reopened() {
        return with(State.OPEN, games, Said.NOBODY, null, note);
    }

    /** The same with other players, as if nothing had been thrown. */
    SeasonMatch between(String one, String other) {
        SeasonMatch blank = open(id, stage, division, week, place, one, other);
        return blank.extended(extended);
    }

    /** The same, closing at another time; null for the one of its week. */
    public SeasonMatch extended(@Nullable LocalDateTime until) {
        return new SeasonMatch(
                id,
                stage,
                division,
                week,
                place,
                first,
                second,
                until,
                state,
                games,
                said,
                forfeit,
                firstSubstitute,
                secondSubstitute,
                headStart,
                note);
    }

    /** The same with substitutes; empty for none. */
    SeasonMatch substitutes(String one, String other) {
        return new SeasonMatch(
                id, stage, division, week, place, first, second, extended, state, games, said, forfeit, one, other,
                headStart, note);
    }

    /** The same with a head start. */
    SeasonMatch headStart(int points) {
        return new SeasonMatch(
                id,
                stage,
                division,
                week,
                place,
                first,
                second,
                extended,
                state,
                games,
                said,
                forfeit,
                firstSubstitute,
                secondSubstitute,
                points,
                note);
    }

    /** The same with another note. */
    SeasonMatch noted(String text) {
        return with(state, games, said, forfeit, text);
    }

    private SeasonMatch with(State how, List<GameScore> totals, Said who, @Nullable Award to, String text) {
        return new SeasonMatch(
                id,
                stage,
                division,
                week,
                place,
                first,
                second,
                extended,
                how,
                totals,
                who,
                to,
                firstSubstitute,
                secondSubstitute,
                headStart,
                text);
    }
}
