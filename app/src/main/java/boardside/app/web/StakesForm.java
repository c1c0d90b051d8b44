package boardside.app.web;

import boardside.app.practice.Stakes;
import boardside.engine.rules.Drill;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** What may be put at stake in a run, on the forms that set one up. */
public final class StakesForm {
    private StakesForm() {}

    /** Whether a drill can be thrown under stakes; a real game has enough of its own. */
    static boolean asked(Drill drill) {
        return drill != Drill.GAME && drill != Drill.CASUAL;
    }

    /**
     * What the form shows.
     *
     * @param stakes what is chosen, or null for nothing
     * @param fields number choices as last entered
     */
    public record View(Drill drill, @Nullable Stakes stakes, Map<String, String> fields) {
        /** Whether the run consists of tries. */
        public boolean tries() {
            return TriesPage.DRILLS.contains(drill);
        }

        /** Whether a low round can end it. */
        public boolean asksSuddenDeath() {
            return !tries() && drill.mostBags() <= 4;
        }

        public boolean lastBag() {
            return stakes != null && stakes.lastBag();
        }

        public boolean countDown() {
            return stakes != null && stakes.countDown();
        }

        public List<String> suddenDeaths() {
            return FormReader.offered(field("sudden-death"), List.of("", "3", "4", "5", "6"));
        }

        public List<String> misses() {
            return FormReader.offered(field("misses"), List.of("", "1", "2", "3"));
        }

        public List<String> shotClocks() {
            return FormReader.offered(field("shot-clock"), List.of("", "8", "12", "20"));
        }

        public String field(String name) {
            return fields.getOrDefault(name, "");
        }
    }

    /** Puts what is in force into the number fields. */
    static void fill(Map<String, String> fields, @Nullable Stakes stakes) {
        fields.put("sudden-death", stakes == null ? "" : Objects.toString(stakes.suddenDeath(), ""));
        fields.put("misses", stakes == null ? "" : Objects.toString(stakes.misses(), ""));
        fields.put("shot-clock", stakes == null ? "" : Objects.toString(stakes.shotClock(), ""));
    }

    /**
     * Reads what was chosen.
     *
     * @param mixed whether bag sets are called bag by bag
     * @param planned tries planned, or null for an open end; nothing of rounds
     */
    static @Nullable Stakes read(FormReader form, Drill drill, boolean mixed, @Nullable Integer planned) {
        if (!asked(drill)) {
            return null;
        }
        boolean tries = TriesPage.DRILLS.contains(drill);
        boolean many = drill.mostBags() > 4;
        boolean lastBag = form.is("last-bag", "yes");
        if (lastBag && !tries && many && !mixed) {
            form.fault("start.fault.last-bag");
        }
        if (lastBag && tries && planned == null) {
            form.fault("start.fault.last-try");
        }
        Integer sudden = tries || many ? null : form.number("sudden-death", "stakes.sudden-death", 0, 12);
        Integer misses = tries ? form.number("misses", "stakes.misses", 0, 12) : null;
        Integer clock = form.number("shot-clock", "stakes.shot-clock", 3, 120);
        Stakes stakes = new Stakes(
                lastBag && (tries || !many || mixed), some(sudden), some(misses), clock, form.is("count-down", "yes"));
        return stakes.any() ? stakes : null;
    }

    private static @Nullable Integer some(@Nullable Integer number) {
        return number == null || number == 0 ? null : number;
    }
}
