package boardside.app.record;

import boardside.app.practice.BagSet;
import boardside.app.practice.Contest;
import boardside.app.practice.Failure;
import boardside.app.practice.Ids;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.practice.TrialPlan;
import boardside.app.store.Database;
import boardside.app.store.RoundRows;
import boardside.app.store.Transaction;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.stream.Collectors;

/**
 * Trials: how they were set up, with what was thrown for them. Every method is one transaction; what it changes is kept in
 * the history and can be undone. Thread safe.
 */
public final class Trials {
    private static final int LONGEST_NAME = 60;

    private final Database database;
    private final InstantSource clock;
    private final Ids ids;
    private final Corrections corrections;

    Trials(Database database, InstantSource clock, Ids ids, Corrections corrections) {
        this.database = database;
        this.clock = clock;
        this.ids = ids;
        this.corrections = corrections;
    }

    /** A player's trials, the newest first; deleted ones are left out. */
    public List<TrialDetail> all(int player) {
        return database.read(rows -> {
            List<TrialDetail> trials = new ArrayList<>();
            for (TrialPlan plan : rows.trials().all(player)) {
                if (!plan.deleted()) {
                    trials.add(0, detail(rows, player, plan));
                }
            }
            return trials;
        });
    }

    /** One by id; empty if there is none, or it was deleted. */
    public Optional<TrialDetail> find(int player, String id) {
        return database.read(rows ->
                rows.trials().find(player, id).filter(plan -> !plan.deleted()).map(plan -> detail(rows, player, plan)));
    }

    /**
     * One by name.
     *
     * @throws Failure.NotFound naming those there are
     */
    public TrialDetail named(int player, String name) {
        List<TrialDetail> all = all(player);
        return all.stream()
                .filter(detail -> detail.plan().name().equals(name))
                .findFirst()
                .orElseThrow(() -> new Failure.NotFound("there is no trial \"" + name + "\""
                        + (all.isEmpty()
                                ? "; make one with: boardside trial new NAME --candidate BAG --candidate BAG"
                                : "; there are "
                                        + all.stream()
                                                .map(detail -> detail.plan().name())
                                                .collect(Collectors.joining(", ")))));
    }

    static Map<String, String> bagNames(Transaction rows, int player) {
        return rows.players().bags(player).stream().collect(Collectors.toMap(BagSet::id, BagSet::name));
    }

    private static TrialDetail detail(Transaction rows, int player, TrialPlan plan) {
        List<Run> runs = rows.runs().ofTrial(player, plan.id());
        Map<String, List<RoundRows.Stored>> rounds = runs.isEmpty()
                ? Map.of()
                : rows.rounds().of(player, runs.stream().map(Run::id).toList());
        List<RunDetail> details = new ArrayList<>();
        for (Run run : runs) {
            List<Round> thrown = rounds.getOrDefault(run.id(), List.of()).stream()
                    .map(RoundRows.Stored::round)
                    .filter(round -> !round.lines().isEmpty())
                    .toList();
            details.add(new RunDetail(
                    run, rows.runs().session(player, run.session()).orElseThrow(), thrown));
        }
        return TrialDetail.of(plan, bagNames(rows, player), details);
    }

    /**
     * Adds a trial.
     *
     * @param plan its id empty; when it is made is told by the store's clock
     * @throws Failure.BadInput if its name is blank, too long or taken, or a bag set is not there
     */
    public TrialPlan add(int player, TrialPlan plan) {
        return database.write(rows -> {
            change(rows, player);
            String name = plan.name().strip();
            List<String> faults = nameFaults(rows, player, "", name);
            for (Contest.Way way : plan.candidates()) {
                if (!way.bag().isEmpty()
                        && rows.players().bag(player, way.bag()).isEmpty()) {
                    faults.add("there is no bag set " + way.bag() + "; name it first");
                }
            }
            if (!faults.isEmpty()) {
                throw new Failure.BadInput(faults);
            }
            TrialPlan made = new TrialPlan(
                    ids.next(),
                    name,
                    plan.candidates(),
                    plan.board(),
                    plan.longest(),
                    plan.margin(),
                    plan.seed(),
                    now(),
                    TrialPlan.State.OPEN,
                    false);
            rows.trials().put(player, made);
            return made;
        });
    }

    /** What is wrong with a trial's name. */
    private static List<String> nameFaults(Transaction rows, int player, String id, String name) {
        List<String> faults = new ArrayList<>();
        if (name.isEmpty()) {
            faults.add("a trial needs a name");
        } else if (name.length() > LONGEST_NAME || name.chars().anyMatch(Character::isISOControl)) {
            faults.add("the name of a trial has at most " + LONGEST_NAME + " characters, in one line");
        }
        if (taken(rows, player, id, name)) {
            faults.add("the name \"" + name + "\" is taken; give the trial another one");
        }
        return faults;
    }

    private static boolean taken(Transaction rows, int player, String id, String name) {
        return rows.trials().all(player).stream()
                .anyMatch(other -> !other.deleted()
                        && !other.id().equals(id)
                        && other.name().equals(name));
    }

    /**
     * Gives a trial another name.
     *
     * @throws Failure.BadInput if it is blank, too long or taken
     */
    public TrialPlan rename(int player, String id, String name) {
        return edit(player, id, (rows, plan) -> {
            List<String> faults = nameFaults(rows, player, id, name.strip());
            if (!faults.isEmpty()) {
                throw new Failure.BadInput(faults);
            }
            return plan.named(name.strip());
        });
    }

    /** Deleted trials of a player, the newest first. */
    public List<TrialPlan> deleted(int player) {
        return database.read(rows -> {
            List<TrialPlan> gone = new ArrayList<>();
            for (TrialPlan plan : rows.trials().all(player)) {
                if (plan.deleted()) {
                    gone.add(0, plan);
                }
            }
            return gone;
        });
    }

    /** Pauses, resumes or stops a trial. */
    public TrialPlan set(int player, String id, TrialPlan.State state) {
        return edit(player, id, (rows, plan) -> plan.with(state));
    }

    /**
     * Deletes a trial, or brings it back; its runs stay as they are. One whose name was given to another since comes back with a
     * number behind it.
     */
    public TrialPlan delete(int player, String id, boolean gone) {
        return edit(player, id, (rows, plan) -> {
            TrialPlan edited = plan.deleted(gone);
            for (int number = 2; !gone && taken(rows, player, id, edited.name()); number++) {
                edited = edited.named(shortened(plan.name(), number) + " " + number);
            }
            return edited;
        });
    }

    private static String shortened(String name, int number) {
        return name.substring(
                0,
                Math.min(
                        name.length(), LONGEST_NAME - 1 - String.valueOf(number).length()));
    }

    private TrialPlan edit(int player, String id, BiFunction<Transaction, TrialPlan, TrialPlan> edit) {
        return database.write(rows -> {
            change(rows, player);
            TrialPlan before =
                    rows.trials().find(player, id).orElseThrow(() -> new Failure.NotFound("there is no trial " + id));
            TrialPlan after = edit.apply(rows, before);
            if (before.equals(after)) {
                rows.rollBack();
            } else {
                corrections.putTrial(rows, player, before, after, now());
            }
            return after;
        });
    }

    private static void change(Transaction rows, int player) {
        if (!rows.players().changed(player)) {
            throw new Failure.NotFound("there is no player " + player);
        }
    }

    private String now() {
        return clock.instant().toString();
    }
}
