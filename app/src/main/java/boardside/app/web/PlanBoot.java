package boardside.app.web;

import boardside.app.practice.PlannedBlock;
import boardside.app.practice.Setup;
import boardside.app.record.Standing;
import boardside.engine.plan.Activity;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Word;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the page at the boards knows of the plan its run is thrown for, so that it goes on to the next block without the network.
 *
 * @param plan id of the plan
 * @param steps blocks still to be taken, in their order
 */
record PlanBoot(String plan, List<Step> steps) {
    /** How a block is gone on to. */
    enum Kind implements Word {
        /** Here: its rounds are entered on the same page. */
        HERE,
        /** It has a page of its own, which has to be loaded. */
        PAGE,
        /** Nothing is recorded. */
        REST
    }

    /**
     * A block.
     *
     * @param name with its minutes
     * @param start of one that is thrown here, else null
     */
    record Step(
            String choice,
            int place,
            String name,
            String does,
            String why,
            Kind kind,
            @Nullable Start start) {}

    /** What its run starts with. */
    record Start(
            Drill drill,
            boolean warmUp,
            String opponent,
            Setup setup,
            @Nullable Standing standing) {}

    static Kind kind(PlannedBlock block) {
        return block.activity() == Activity.BREAK ? Kind.REST : PlanStart.offline(block) ? Kind.HERE : Kind.PAGE;
    }
}
