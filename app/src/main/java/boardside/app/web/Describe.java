package boardside.app.web;

import boardside.app.practice.GhostPlay;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.practice.Setup;
import boardside.app.record.Games;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Game;
import boardside.engine.rules.Setting;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;

/** Runs in a few words. */
final class Describe {
    private final Texts texts;

    Describe(Texts texts) {
        this.texts = texts;
    }

    /** What a drill would be with this set-up, for its tile. */
    String tile(Drill drill, Setup setup) {
        String key = "drill." + drill.word() + ".tile";
        if (drill.needsGhost()) {
            return texts.of(key, Objects.requireNonNullElse(setup.ghost(), 0), target(setup));
        }
        if (drill == Drill.TOTAL) {
            return setup.rounds() == null ? texts.of(key + ".open") : texts.of(key, setup.rounds());
        }
        return texts.of(key);
    }

    /** A run by its drill, bags, face, approach, board and stake. */
    String run(Drill drill, Setup setup, Map<String, String> bagNames) {
        List<String> parts = new ArrayList<>();
        parts.add(texts.of("drill." + drill.word()));
        if (drill.needsGhost()) {
            parts.add(texts.of("drill.race.run", Objects.requireNonNullElse(setup.ghost(), 0), target(setup)));
        } else if (drill == Drill.TOTAL && setup.rounds() != null) {
            parts.add(texts.of("drill.total.run", setup.rounds()));
        }
        setup.bags().stream().map(bagNames::get).filter(Objects::nonNull).forEach(parts::add);
        if (setup.face() != null) {
            parts.add(texts.of("face." + setup.face().word()));
        }
        if (setup.approach() != null) {
            parts.add(texts.of("approach." + setup.approach().word()));
        }
        if (setup.board() != BoardKind.REGULATION) {
            parts.add(texts.of("board." + setup.board().word()));
        }
        if (setup.setting() != Setting.PRACTICE) {
            parts.add(texts.of("setting." + setup.setting().word()));
        }
        return String.join(", ", parts);
    }

    /** Whom a race is thrown against: a ghost's points, a player of a level, or the player's own past. */
    String ghost(Setup setup) {
        GhostPlay play = setup.ghostPlay();
        if (play == null) {
            return texts.of("ghost.steady", Objects.requireNonNullElse(setup.ghost(), 0));
        }
        String of = switch (play.kind()) {
            case LEVEL -> play.of();
            case MONTH -> Numbers.month(YearMonth.parse(play.of()));
            case DAY -> Numbers.day(LocalDate.parse(play.of()));
        };
        return texts.of("ghost." + play.kind().word(), of);
    }

    /** How a run went, in a few words; a race needs its rounds. */
    String result(Run run, List<Round> rounds) {
        Run.Sum sum = run.sum();
        if (sum.thrown() == 0) {
            return texts.of("result.nothing");
        }
        if (run.drill().needsGhost() && sum.points() != null) {
            Games.Played played = Games.after(run, rounds);
            Game game = played.game();
            String key = switch (played.result()) {
                case WON -> "result.won";
                case LOST -> "result.lost";
                case OPEN -> "result.open";
            };
            return texts.of(key, game.mine(), game.theirs(), game.rounds());
        }
        if (sum.points() == null || run.drill() == Drill.VOLUME) {
            return run.drill() == Drill.CASUAL
                    ? texts.of("result.thrown", sum.thrown())
                    : texts.of("run.bags.in", sum.in(), sum.thrown());
        }
        return texts.of("run.done.total", sum.points(), sum.rounds());
    }

    /** A day, written out. */
    String day(String day) {
        return LocalDate.parse(day)
                .format(DateTimeFormatter.ofPattern("EEE d MMM yyyy", Locale.forLanguageTag(texts.language())));
    }

    private static int target(Setup setup) {
        return Objects.requireNonNullElse(setup.target(), 21);
    }
}
