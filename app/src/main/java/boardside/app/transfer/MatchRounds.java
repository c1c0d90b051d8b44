package boardside.app.transfer;

import boardside.app.season.MatchEdit;
import boardside.app.season.MatchNight;
import boardside.app.season.MatchRound;
import boardside.app.season.MatchSide;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** A match as it is thrown, as values for JSON: what pages draw, spectators are sent, and the command line answers. */
public final class MatchRounds {
    private MatchRounds() {}

    /** The match. What is as usual is left out of a round: {@code way} where it is live, {@code edited} where it is not. */
    public static Map<String, Object> of(MatchNight night) {
        Map<String, Object> one = new LinkedHashMap<>();
        one.put("version", night.version());
        one.put("season", night.head().seasonName());
        one.put("stage", night.head().stage().word());
        one.put("week", night.head().week());
        one.put("first", night.head().first());
        one.put("second", night.head().second());
        one.put("firstSubstitute", night.head().firstSubstitute());
        one.put("secondSubstitute", night.head().secondSubstitute());
        one.put("state", night.head().state().word());
        one.put("headStart", night.head().headStart());
        one.put("roundsAGame", night.head().rounds());
        one.put("games", games(night));
        one.put("edits", night.edits().stream().map(MatchRounds::edit).toList());
        Map<String, String> streams = new LinkedHashMap<>();
        for (MatchSide side : MatchSide.values()) {
            if (night.streams().containsKey(side)) {
                streams.put(side.word(), night.streams().get(side));
            }
        }
        one.put("streams", streams);
        return one;
    }

    /** Games by number: totals as told, and rounds, each side's at its place whenever it was thrown. */
    public static List<Map<String, Object>> games(MatchNight night) {
        List<Map<String, Object>> games = new ArrayList<>();
        for (int game = 1; game <= night.head().games(); game++) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("game", game);
            one.put("totals", Arrays.asList(night.total(game, MatchSide.FIRST), night.total(game, MatchSide.SECOND)));
            for (MatchSide side : MatchSide.values()) {
                List<Map<String, Object>> rounds = new ArrayList<>();
                for (MatchRound round : night.rounds(game, side)) {
                    rounds.add(round(round, night.edited(game, side, round.number())));
                }
                one.put(side.word(), rounds);
            }
            games.add(one);
        }
        return games;
    }

    private static Map<String, Object> round(MatchRound round, boolean edited) {
        Map<String, Object> one = new LinkedHashMap<>();
        one.put("round", round.number());
        one.put("in", round.in());
        one.put("on", round.on());
        one.put("off", round.off());
        one.put("at", at(round));
        if (round.way() != MatchRound.Way.LIVE) {
            one.put("way", round.way().word());
        }
        if (edited) {
            one.put("edited", true);
        }
        return one;
    }

    private static @Nullable String at(MatchRound round) {
        return round.thrownAt() == null
                ? null
                : round.thrownAt().truncatedTo(ChronoUnit.SECONDS).toString();
    }

    private static Map<String, Object> edit(MatchEdit edit) {
        Map<String, Object> one = new LinkedHashMap<>();
        one.put("at", edit.at());
        one.put("by", edit.by().word());
        one.put("game", edit.game());
        one.put("side", edit.side().word());
        one.put("round", edit.round());
        one.put("earlier", edit.earlier());
        one.put("later", edit.later());
        return one;
    }
}
