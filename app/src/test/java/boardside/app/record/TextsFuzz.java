package boardside.app.record;

import boardside.app.fuzz.Fuzzed;
import boardside.app.practice.Failure;
import boardside.app.practice.Moment;
import boardside.app.practice.SlideTest;
import boardside.engine.tactics.Target;
import java.util.ArrayList;
import java.util.List;

/** Texts that name one thing: positions, slides, shared trials, instants, parts of the board. Written and read, they are the same. */
public final class TextsFuzz {
    private TextsFuzz() {}

    /** One input. */
    public static void fuzzerTestOneInput(byte[] data) {
        String text = Fuzzed.text(data);
        List<String> faults = new ArrayList<>();
        List<SlideTest.Slid> slides = SlideText.read(text, faults);
        if (faults.isEmpty()) {
            Fuzzed.same(slides, SlideText.read(SlideText.of(slides), faults));
        }
        tried(text, () -> AdviceQuestion.read(text));
        tried(text, () -> {
            SharedTrial trial = SharedTrial.read(text);
            Fuzzed.same(trial, SharedTrial.read(trial.text()));
            trial.plan(name -> name, 1);
        });
        tried(text, () -> {
            Moment moment = Moment.of(text);
            Fuzzed.same(moment, Moment.of(moment.text()));
        });
        tried(text, () -> {
            Target target = Target.parse(text);
            Fuzzed.same(target, Target.parse(target.text()));
        });
    }

    private static void tried(String text, Runnable reading) {
        try {
            reading.run();
        } catch (Failure | IllegalArgumentException refused) {
            Fuzzed.refused(refused, text);
        }
    }
}
