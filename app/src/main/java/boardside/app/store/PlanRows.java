package boardside.app.store;

import boardside.app.json.Json;
import boardside.app.practice.PlannedBlock;
import boardside.app.practice.Refused;
import boardside.app.practice.SessionPlan;
import boardside.app.practice.SessionPlan.Placed;
import boardside.app.practice.SessionPlan.Points;
import boardside.app.practice.SetGoal;
import boardside.engine.plan.Energy;
import boardside.engine.plan.Goal;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Word;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;

/** Plans, what was refused, goals, and who may see whose. */
public final class PlanRows {
    private final Handle handle;

    PlanRows(Handle handle) {
        this.handle = handle;
    }

    // Plans

    /** All plans of a player, in the order made. */
    public List<SessionPlan> all(int player) {
        return plans(handle.createQuery("select * from plan where player = :player order by id"), player);
    }

    /** The latest plan. */
    public Optional<SessionPlan> latest(int player) {
        return plans(handle.createQuery("select * from plan where player = :player order by id desc limit 1"), player)
                .stream()
                .findFirst();
    }

    /** A plan. */
    public Optional<SessionPlan> find(int player, String id) {
        return plans(
                        handle.createQuery("select * from plan where player = :player and id = :id")
                                .bind("id", id),
                        player)
                .stream()
                .findFirst();
    }

    /** The plan a run was thrown for. */
    public Optional<SessionPlan> of(int player, String run) {
        return handle.createQuery("select plan from plan_block where player = :player and run = :run limit 1")
                .bind("player", player)
                .bind("run", run)
                .mapTo(String.class)
                .findOne()
                .flatMap(plan -> find(player, plan));
    }

    private List<SessionPlan> plans(Query query, int player) {
        query.bind("player", player);
        List<SessionPlan> bare = query.map((row, context) -> plan(row)).list();
        if (bare.isEmpty()) {
            return bare;
        }
        Map<String, List<Placed>> blocks = new LinkedHashMap<>();
        handle.createQuery("select * from plan_block where player = :player and plan in (<plans>) order by plan, place")
                .bind("player", player)
                .bindList("plans", bare.stream().map(SessionPlan::id).toList())
                .map((row, context) -> Map.entry(row.getString("plan"), placed(row)))
                .forEach(entry -> blocks.computeIfAbsent(entry.getKey(), key -> new ArrayList<>())
                        .add(entry.getValue()));
        return bare.stream()
                .map(plan -> with(plan, blocks.getOrDefault(plan.id(), List.of())))
                .toList();
    }

    private static SessionPlan with(SessionPlan plan, List<Placed> blocks) {
        return new SessionPlan(
                plan.id(),
                plan.day(),
                plan.minutes(),
                plan.energy(),
                plan.bagSets(),
                plan.boards(),
                plan.company(),
                plan.limited(),
                plan.before(),
                plan.closedAt(),
                blocks);
    }

    private static SessionPlan plan(ResultSet row) throws SQLException {
        double before = row.getDouble("before");
        boolean known = !row.wasNull();
        Set<BoardKind> boards = Stream.of(row.getString("boards").split(","))
                .map(word -> Word.of(BoardKind.class, word))
                .collect(Collectors.toSet());
        return new SessionPlan(
                row.getString("id"),
                row.getString("day"),
                row.getInt("minutes"),
                Word.of(Energy.class, row.getString("energy")),
                row.getInt("bag_sets"),
                boards,
                row.getInt("company") == 1,
                row.getInt("limited") == 1,
                known ? new Points(before, row.getDouble("before_low"), row.getDouble("before_high")) : null,
                row.getString("closed_at"),
                List.of());
    }

    private static Placed placed(ResultSet row) throws SQLException {
        return new Placed(
                Json.read(row.getString("value"), PlannedBlock.class), row.getString("run"), row.getString("done_at"));
    }

    /** A new plan with its blocks; the runs of its blocks exist. */
    public void add(int player, SessionPlan plan) {
        Points before = plan.before();
        handle.createUpdate("insert into plan (player, id, day, minutes, energy, bag_sets, boards, company, limited,"
                        + " before, before_low, before_high, closed_at) values (:player, :id, :day, :minutes, :energy,"
                        + " :sets, :boards, :company, :limited, :before, :low, :high, :closed)")
                .bind("player", player)
                .bind("id", plan.id())
                .bind("day", plan.day())
                .bind("minutes", plan.minutes())
                .bind("energy", plan.energy().word())
                .bind("sets", plan.bagSets())
                .bind(
                        "boards",
                        plan.boards().stream().map(BoardKind::word).sorted().collect(Collectors.joining(",")))
                .bind("company", plan.company() ? 1 : 0)
                .bind("limited", plan.limited() ? 1 : 0)
                .bind("before", before == null ? null : (Double) before.estimate())
                .bind("low", before == null ? null : (Double) before.low())
                .bind("high", before == null ? null : (Double) before.high())
                .bind("closed", plan.closedAt())
                .execute();
        blocks(player, plan.id(), plan.blocks());
    }

    /** Sets a plan's blocks in place of those it had. */
    public void blocks(int player, String plan, List<Placed> blocks) {
        handle.createUpdate("delete from plan_block where player = :player and plan = :plan")
                .bind("player", player)
                .bind("plan", plan)
                .execute();
        for (int place = 0; place < blocks.size(); place++) {
            Placed block = blocks.get(place);
            handle.createUpdate("insert into plan_block (player, plan, place, value, run, done_at)"
                            + " values (:player, :plan, :place, :value, :run, :done)")
                    .bind("player", player)
                    .bind("plan", plan)
                    .bind("place", place)
                    .bind("value", Json.write(block.block()))
                    .bind("run", block.run())
                    .bind("done", block.doneAt())
                    .execute();
        }
    }

    /** Puts a plan away. */
    public void close(int player, String plan, String at) {
        handle.createUpdate("update plan set closed_at = :at where player = :player and id = :id")
                .bind("at", at)
                .bind("player", player)
                .bind("id", plan)
                .execute();
    }

    // What was refused

    /** What a player refused since a day (yyyy-mm-dd, included), in the order refused. */
    public List<Refused> refused(int player, String from) {
        return handle.createQuery("select * from refusal where player = :player and day >= :from order by id")
                .bind("player", player)
                .bind("from", from)
                .map((row, context) -> new Refused(row.getString("id"), row.getString("day"), row.getString("choice")))
                .list();
    }

    /** One more refusal. */
    public void refuse(int player, Refused refused) {
        handle.createUpdate("insert into refusal (player, id, day, choice) values (:player, :id, :day, :choice)")
                .bind("player", player)
                .bind("id", refused.id())
                .bind("day", refused.day())
                .bind("choice", refused.choice())
                .execute();
    }

    // Goals

    /** All goals, put away ones too, in the order set. */
    public List<SetGoal> goals(int player) {
        return handle.createQuery("select * from goal where player = :player order by id")
                .bind("player", player)
                .map((row, context) -> new SetGoal(
                        row.getString("id"),
                        new Goal(
                                Word.of(Goal.Kind.class, row.getString("kind")),
                                row.getDouble("value"),
                                LocalDate.parse(row.getString("by_day"))),
                        row.getString("set_on"),
                        row.getString("dropped_on")))
                .list();
    }

    /** Adds a goal, or puts one in place of what it was. */
    public void put(int player, SetGoal goal) {
        handle.createUpdate("insert into goal (player, id, kind, value, by_day, set_on, dropped_on)"
                        + " values (:player, :id, :kind, :value, :by, :set, :dropped)"
                        + " on conflict (player, id) do update set dropped_on = excluded.dropped_on")
                .bind("player", player)
                .bind("id", goal.id())
                .bind("kind", goal.goal().kind().word())
                .bind("value", goal.goal().value())
                .bind("by", goal.goal().by().toString())
                .bind("set", goal.setOn())
                .bind("dropped", goal.droppedOn())
                .execute();
    }

    // Who may see whose

    /** Numbers of the players who may see a player's form and plan. */
    public List<Integer> coaches(int player) {
        return handle.createQuery("select coach from share where player = :player order by coach")
                .bind("player", player)
                .mapTo(Integer.class)
                .list();
    }

    /** Numbers of the players whose form and plan a coach may see. */
    public List<Integer> players(int coach) {
        return handle.createQuery("select player from share where coach = :coach order by player")
                .bind("coach", coach)
                .mapTo(Integer.class)
                .list();
    }

    /** Lets a coach see a player's form and plan. */
    public void grant(int player, int coach, String at) {
        handle.createUpdate("insert into share (player, coach, granted_at) values (:player, :coach, :at)"
                        + " on conflict (player, coach) do nothing")
                .bind("player", player)
                .bind("coach", coach)
                .bind("at", at)
                .execute();
    }

    /** Takes that back; returns whether there was anything to take back. */
    public boolean revoke(int player, int coach) {
        return handle.createUpdate("delete from share where player = :player and coach = :coach")
                        .bind("player", player)
                        .bind("coach", coach)
                        .execute()
                > 0;
    }
}
