package boardside.app.cli;

import boardside.app.practice.Contest;
import boardside.app.practice.TrialPlan;
import boardside.app.record.TrialDetail;
import boardside.engine.rules.Word;
import boardside.engine.trial.Ending;
import boardside.engine.trial.Outlook;
import boardside.engine.trial.TrialState;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Trials as JSON. */
final class TrialAnswers {
    private TrialAnswers() {}

    static Map<String, @Nullable Object> plan(TrialDetail detail) {
        TrialPlan plan = detail.plan();
        Map<String, @Nullable Object> answer = new LinkedHashMap<>();
        answer.put("id", plan.id());
        answer.put("name", plan.name());
        answer.put("state", plan.state());
        answer.put("candidates", detail.names());
        answer.put("board", plan.board());
        answer.put("longest", plan.longest());
        answer.put("margin", plan.margin());
        return answer;
    }

    static Map<String, @Nullable Object> status(TrialDetail detail) {
        TrialState state = detail.state();
        Map<String, @Nullable Object> answer = plan(detail);
        answer.put("ending", ending(state.ending()));
        answer.put("blocks", state.blocks());
        List<Map<String, @Nullable Object>> standings = new ArrayList<>();
        for (TrialState.Standing standing : state.standings()) {
            Contest.Way way = detail.plan().candidates().get(standing.candidate());
            Map<String, @Nullable Object> one = new LinkedHashMap<>();
            one.put("candidate", detail.names().get(standing.candidate()));
            one.put("face", way.face() == null ? null : ((Word) way.face()).word());
            one.put("approach", way.approach() == null ? null : ((Word) way.approach()).word());
            one.put("rounds", standing.rounds());
            one.put("pointsPerRound", standing.pointsPerRound());
            one.put("behind", standing.behind());
            one.put("droppedAfter", standing.droppedAfter());
            standings.add(one);
        }
        answer.put("standings", standings);
        answer.put("lead", state.lead());
        answer.put("needed", state.needed());
        answer.put("roundsUnused", 2 * state.unused());
        answer.put("sentence", state.sentence());
        return answer;
    }

    /** The ending's word. */
    static String ending(Ending ending) {
        if (ending instanceof Ending.Winner) {
            return "winner";
        } else if (ending instanceof Ending.AsGoodAsEqual) {
            return "as-good-as-equal";
        }
        return ending instanceof Ending.NotSettled ? "not-settled" : "under-way";
    }

    static Map<String, @Nullable Object> outlook(Outlook outlook) {
        Map<String, @Nullable Object> answer = new LinkedHashMap<>();
        answer.put("candidates", outlook.design().candidates());
        answer.put("longest", outlook.design().longest());
        answer.put("deviation", outlook.swings().deviation());
        answer.put("rounds", outlook.swings().rounds());
        answer.put("minutesPerRound", outlook.minutesPerRound());
        answer.put("differences", outlook.reaches());
        answer.put("sentence", outlook.sentence());
        return answer;
    }
}
