package boardside.app.web;

import boardside.app.practice.Contest;
import boardside.app.practice.GhostPlay;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.practice.Setup;
import boardside.app.practice.Stakes;
import boardside.app.practice.Try;
import boardside.app.record.Chains;
import boardside.app.record.Games;
import boardside.app.record.TryStanding;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Game;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

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
            return texts.of(key, ghost(setup), target(setup));
        }
        if (setup.mixed()) {
            return texts.of(key + ".mixed");
        }
        if (drill == Drill.TOTAL) {
            return setup.rounds() == null ? texts.of(key + ".open") : texts.of(key, setup.rounds());
        }
        return texts.of(key);
    }

    /** A run by its drill, opponent, bags, face, approach, board and stakes. */
    String run(Run run, Map<String, String> bagNames) {
        Drill drill = run.drill();
        Setup setup = run.setup();
        List<String> parts = new ArrayList<>();
        parts.add(texts.of("drill." + drill.word()));
        Contest contest = setup.contest();
        if (contest != null && contest.alone()) {
            parts.add(texts.of("drill.duel.alone"));
        } else if (!run.opponent().isEmpty()) {
            parts.add(texts.of("drill.versus", run.opponent()));
        }
        if (contest != null && contest.doubles()) {
            parts.add(texts.of("drill.game.doubles"));
        }
        if (contest != null && contest.headStart() != 0) {
            parts.add(headStart(contest, run.opponent()));
        }
        if (drill.needsGhost()) {
            parts.add(texts.of("drill.race.run", ghost(setup), target(setup)));
        } else if (setup.mixed()) {
            parts.add(texts.of("drill.volume.mixed"));
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
        stakes(parts, drill, setup.stakes());
        return String.join(", ", parts);
    }

    /** Who began with how many points. */
    private String headStart(Contest contest, String opponent) {
        int lead = contest.headStart();
        String whom = lead > 0
                ? texts.of(contest.alone() ? "side.a" : "side.me")
                : contest.alone() ? texts.of("side.b") : opponent.isEmpty() ? texts.of("side.versus") : opponent;
        return texts.of("run.contest.lead", whom, Math.abs(lead));
    }

    private void stakes(List<String> parts, Drill drill, @Nullable Stakes stakes) {
        if (stakes == null) {
            return;
        }
        if (stakes.lastBag()) {
            parts.add(texts.of(TriesPage.DRILLS.contains(drill) ? "stakes.last-try" : "stakes.last-bag"));
        }
        Integer misses = stakes.misses();
        if (misses != null) {
            parts.add(texts.of(misses == 1 ? "stakes.misses.said.one" : "stakes.misses.said", misses));
        }
        if (stakes.suddenDeath() != null) {
            parts.add(texts.of("stakes.sudden-death.said", stakes.suddenDeath()));
        }
        if (stakes.shotClock() != null) {
            parts.add(texts.of("stakes.shot-clock.said", stakes.shotClock()));
        }
    }

    /** Whom a race is thrown against: a ghost's points, a player of a level, or the player's own past. */
    String ghost(Setup setup) {
        GhostPlay play = setup.ghostPlay();
        if (play == null) {
            return texts.of("ghost.steady", Objects.requireNonNullElse(setup.ghost(), 0));
        }
        String of = switch (play.kind()) {
            case LEVEL -> play.of();
            case MONTH -> texts.month(YearMonth.parse(play.of()));
            case DAY -> texts.day(LocalDate.parse(play.of()));
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
        if (run.drill() == Drill.DUEL || run.drill() == Drill.GAME) {
            return contest(run, rounds);
        }
        if (sum.points() == null || run.drill() == Drill.VOLUME) {
            return run.drill() == Drill.CASUAL
                    ? texts.of("result.thrown", sum.thrown())
                    : texts.of("run.bags.in", sum.in(), sum.thrown());
        }
        return texts.of("run.done.total", sum.points(), sum.rounds());
    }

    private String contest(Run run, List<Round> rounds) {
        Games.Played played = Games.after(run, rounds);
        boolean alone = Games.contest(run, rounds).alone();
        Game game = played.game();
        Run.Score told = game.over() ? null : run.score();
        int mine = told == null ? game.mine() : told.mine();
        int theirs = told == null ? game.theirs() : told.theirs();
        boolean won = played.result() == Game.Result.WON;
        if (!played.over()) {
            return played.known()
                    ? texts.of("result.open", mine, theirs)
                    : texts.of("result.unknown", run.sum().rounds());
        }
        if (alone) {
            return texts.of(
                    "result.duel", texts.of(won ? "side.a" : "side.b"), Math.max(mine, theirs), Math.min(mine, theirs));
        }
        return texts.of(won ? "result.game.won" : "result.game.lost", mine, theirs);
    }

    /** How a run of tries went: how many worked, or what became of goes at a chain. */
    String tried(Run run, List<Try> tries) {
        if (tries.isEmpty()) {
            return texts.of("result.nothing");
        }
        TryStanding.Sum mine = TryStanding.after(run.setup(), tries).of(Side.ME);
        return texts.of(Chains.chained(run) ? "tries.result.goes" : "tries.result", mine.worked(), mine.tries());
    }

    /** A day, written out. */
    String day(String day) {
        return texts.weekday(LocalDate.parse(day));
    }

    private static int target(Setup setup) {
        return Objects.requireNonNullElse(setup.target(), 21);
    }
}
