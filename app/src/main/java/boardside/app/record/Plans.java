package boardside.app.record;

import boardside.app.practice.Failure;
import boardside.app.practice.Ids;
import boardside.app.practice.Player;
import boardside.app.practice.Refused;
import boardside.app.practice.SessionPlan;
import boardside.app.practice.SessionPlan.Placed;
import boardside.app.practice.SetGoal;
import boardside.app.store.Database;
import boardside.app.store.Transaction;
import boardside.engine.plan.Goal;
import java.time.InstantSource;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * Plans that are followed, what was refused, goals, and who may see a player's form and plan. Every method is one
 * transaction. Thread safe.
 */
public final class Plans {
    /** Goals a player has at a time. */
    public static final int MOST_GOALS = 2;

    /** A refusal counts half after so many days. */
    private static final double HALF = 28;

    private static final int REFUSED_DAYS = 200;

    private final Database database;
    private final InstantSource clock;
    private final Ids ids;

    Plans(Database database, InstantSource clock, Ids ids) {
        this.database = database;
        this.clock = clock;
        this.ids = ids;
    }

    private String now() {
        return clock.instant().toString();
    }

    private static void known(Transaction rows, int player) {
        if (rows.players().find(player).isEmpty()) {
            throw new Failure.NotFound("there is no player " + player);
        }
    }

    // Plans

    /** The plan a player follows on a day. */
    public Optional<SessionPlan> current(int player, LocalDate day) {
        return database.read(rows -> rows.plans().latest(player))
                .filter(plan -> plan.open() && plan.day().equals(day.toString()));
    }

    /** The plan made last. */
    public Optional<SessionPlan> latest(int player) {
        return database.read(rows -> rows.plans().latest(player));
    }

    /** A plan. */
    public Optional<SessionPlan> find(int player, String id) {
        return database.read(rows -> rows.plans().find(player, id));
    }

    /** The plan a run was thrown for. */
    public Optional<SessionPlan> of(int player, String run) {
        return database.read(rows -> rows.plans().of(player, run));
    }

    /**
     * Begins to follow a plan; the one followed before is put away.
     *
     * @param plan its id is given here
     */
    public SessionPlan follow(int player, SessionPlan plan) {
        return database.write(rows -> {
            known(rows, player);
            rows.plans()
                    .latest(player)
                    .filter(SessionPlan::open)
                    .ifPresent(earlier -> rows.plans().close(player, earlier.id(), now()));
            SessionPlan followed = new SessionPlan(
                    ids.next(),
                    plan.day(),
                    plan.minutes(),
                    plan.energy(),
                    plan.bagSets(),
                    plan.boards(),
                    plan.company(),
                    plan.limited(),
                    plan.before(),
                    "",
                    plan.blocks());
            rows.plans().add(player, followed);
            return followed;
        });
    }

    private SessionPlan change(int player, String plan, int place, UnaryOperator<List<Placed>> change) {
        return database.write(rows -> {
            SessionPlan found =
                    rows.plans().find(player, plan).orElseThrow(() -> new Failure.NotFound("there is no such plan"));
            if (!(place >= 0 && place < found.blocks().size())) {
                throw new Failure.NotFound("the plan has no block " + (place + 1));
            }
            rows.plans().blocks(player, plan, change.apply(new ArrayList<>(found.blocks())));
            return rows.plans().find(player, plan).orElseThrow();
        });
    }

    /** Keeps which run a block is thrown in. */
    public SessionPlan begin(int player, String plan, int place, String run) {
        return change(player, plan, place, blocks -> {
            blocks.set(place, new Placed(blocks.get(place).block(), run, ""));
            return blocks;
        });
    }

    /** Keeps that a block was done without a run. */
    public SessionPlan done(int player, String plan, int place) {
        return change(player, plan, place, blocks -> {
            blocks.set(place, new Placed(blocks.get(place).block(), "", now()));
            return blocks;
        });
    }

    /**
     * Puts other blocks in the place of one that was not begun, and keeps that it was refused.
     *
     * @param day the day of the refusal
     */
    public SessionPlan swap(int player, String plan, int place, List<Placed> others, LocalDate day) {
        return database.write(rows -> {
            SessionPlan found =
                    rows.plans().find(player, plan).orElseThrow(() -> new Failure.NotFound("there is no such plan"));
            if (!(place >= 0 && place < found.blocks().size())
                    || found.blocks().get(place).taken()) {
                throw new Failure.BadInput("that block was begun already, or is not there any more");
            }
            List<Placed> blocks = new ArrayList<>(found.blocks());
            Placed refused = blocks.remove(place);
            blocks.addAll(place, others);
            rows.plans().blocks(player, plan, blocks);
            rows.plans()
                    .refuse(
                            player,
                            new Refused(
                                    ids.next(), day.toString(), refused.block().choice()));
            rows.players().changed(player);
            return rows.plans().find(player, plan).orElseThrow();
        });
    }

    /** Puts a plan away. */
    public void close(int player, String plan) {
        database.write(rows -> {
            rows.plans().close(player, plan, now());
            return plan;
        });
    }

    /** How often each choice was refused of late: each time 1, and half after 28 days. */
    public Map<String, Double> refused(int player, LocalDate today) {
        Map<String, Double> refused = new HashMap<>();
        for (Refused one : database.read(rows ->
                rows.plans().refused(player, today.minusDays(REFUSED_DAYS).toString()))) {
            double days =
                    Math.max(0, today.toEpochDay() - LocalDate.parse(one.day()).toEpochDay());
            refused.merge(one.choice(), Math.pow(0.5, days / HALF), Double::sum);
        }
        return refused;
    }

    // Goals

    /** A player's goals that are not put away, the first set first. */
    public List<SetGoal> goals(int player) {
        return database.read(rows -> goals(rows, player));
    }

    private static List<SetGoal> goals(Transaction rows, int player) {
        return rows.plans().goals(player).stream()
                .filter(goal -> goal.droppedOn().isEmpty())
                .toList();
    }

    /**
     * Sets a goal.
     *
     * @throws Failure.BadInput if there are two already, or the goal makes no sense on that day
     */
    public SetGoal setGoal(int player, Goal goal, LocalDate today) {
        return database.write(rows -> {
            known(rows, player);
            List<String> faults = new ArrayList<>(Goal.faults(goal.kind(), goal.value(), goal.by(), today));
            if (goals(rows, player).size() >= MOST_GOALS) {
                faults.add("there are " + MOST_GOALS + " goals already; put one away first");
            }
            if (!faults.isEmpty()) {
                throw new Failure.BadInput(faults);
            }
            SetGoal set = new SetGoal(ids.next(), goal, today.toString(), "");
            rows.plans().put(player, set);
            rows.players().changed(player);
            return set;
        });
    }

    /**
     * Puts a goal away.
     *
     * @throws Failure.NotFound if there is none such
     */
    public void dropGoal(int player, String id, LocalDate today) {
        database.write(rows -> {
            SetGoal goal = goals(rows, player).stream()
                    .filter(one -> one.id().equals(id))
                    .findFirst()
                    .orElseThrow(() -> new Failure.NotFound("there is no such goal"));
            rows.plans().put(player, new SetGoal(id, goal.goal(), goal.setOn(), today.toString()));
            rows.players().changed(player);
            return id;
        });
    }

    // Who may see whose

    /** Who may see a player's form and plan. */
    public List<Player> coaches(int player) {
        return database.read(rows -> named(rows, player, rows.plans().coaches(player)));
    }

    /** Whose form and plan a coach may see. */
    public List<Player> sharedWith(int coach) {
        return database.read(rows -> named(rows, coach, rows.plans().players(coach)));
    }

    // Never beyond one's own account or household, whatever was shared before an account was made.
    private static List<Player> named(Transaction rows, int asker, List<Integer> ids) {
        return rows.players().household(asker).stream()
                .filter(player -> ids.contains(player.id()))
                .toList();
    }

    /**
     * The player whose form and plan a coach asks for.
     *
     * @throws Failure.NotFound if that player has not let the coach see them, or is not there: the same words for both
     */
    public Player shown(int coach, int player) {
        return sharedWith(coach).stream()
                .filter(one -> one.id() == player)
                .findFirst()
                .orElseThrow(() -> new Failure.NotFound("nobody of that name shares their form and plan with you"));
    }

    /**
     * Lets a coach see a player's form and plan; one at a time, so whoever could before cannot any more.
     *
     * @throws Failure.BadInput if both are the same
     */
    public void grant(int player, int coach) {
        database.write(rows -> {
            known(rows, player);
            if (rows.players().household(player).stream().noneMatch(other -> other.id() == coach)) {
                throw new Failure.NotFound("there is no player " + coach);
            }
            if (player == coach) {
                throw new Failure.BadInput("nobody shares with themselves; name another player");
            }
            rows.plans().coaches(player).forEach(earlier -> rows.plans().revoke(player, earlier));
            rows.plans().grant(player, coach, now());
            return player;
        });
    }

    /**
     * Takes that back.
     *
     * @throws Failure.NotFound if that coach could see nothing
     */
    public void revoke(int player, int coach) {
        database.write(rows -> {
            if (!rows.plans().revoke(player, coach)) {
                throw new Failure.NotFound("nothing was shared with that player");
            }
            return player;
        });
    }
}
