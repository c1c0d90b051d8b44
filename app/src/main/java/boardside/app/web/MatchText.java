package boardside.app.web;

import boardside.app.practice.Fixture;
import boardside.app.practice.FixtureRun;
import boardside.app.practice.League;
import boardside.app.practice.Round;
import boardside.app.record.LeagueState;
import boardside.app.record.Records;
import boardside.app.record.RunDetail;
import boardside.engine.league.GameTotals;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;

/** A match as plain text, to paste into the league's chat. */
public final class MatchText {
    private final Texts texts;

    public MatchText(Texts texts) {
        this.texts = texts;
    }

    /** The text: who, each game's totals, the player's rounds, and league points. */
    public String of(Records records, int player, LeagueState state, Fixture fixture) {
        League league = state.league();
        List<String> lines = new ArrayList<>();
        lines.add(
                fixture.week() == 0
                        ? texts.of("night.chat.head", league.name(), fixture.first(), fixture.second())
                        : texts.of(
                                "night.chat.head.week",
                                league.name(),
                                fixture.week(),
                                fixture.first(),
                                fixture.second()));
        int first = 0;
        int second = 0;
        int complete = 0;
        for (int game = 1; game <= league.games(); game++) {
            Fixture.Totals totals = state.totals(fixture, game);
            Integer one = totals.first();
            Integer other = totals.second();
            if (one == null && other == null) {
                continue;
            }
            lines.add(texts.of(
                    "night.chat.game",
                    game,
                    Objects.requireNonNullElse(one, "?"),
                    Objects.requireNonNullElse(other, "?")));
            if (one != null && other != null) {
                GameTotals both = new GameTotals(one, other);
                first += both.points(league.points());
                second += both.turned().points(league.points());
                complete++;
            }
        }
        if (complete > 0) {
            lines.add(texts.of("night.chat.points", fixture.first(), first, fixture.second(), second));
        }
        for (int game = 1; game <= league.games(); game++) {
            int number = game;
            state.thrown(fixture.id(), game)
                    .filter(FixtureRun::finished)
                    .flatMap(run -> records.run(player, run.run()))
                    .map(MatchText::rounds)
                    .filter(rounds -> !rounds.isEmpty())
                    .ifPresent(rounds -> lines.add(texts.of("night.chat.rounds", league.me(), number, rounds)));
        }
        return String.join("\n", lines);
    }

    private static String rounds(RunDetail detail) {
        return detail.rounds().stream()
                .filter(round -> round.side().mine())
                .map(Round::points)
                .map(points -> points == null ? "?" : points.toString())
                .collect(Collectors.joining(" "));
    }

    /** A deadline as the league's clocks show it. */
    static String deadline(Texts texts, String deadline) {
        return texts.when(LocalDateTime.parse(deadline));
    }
}
