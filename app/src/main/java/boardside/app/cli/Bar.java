package boardside.app.cli;

import boardside.app.transfer.LogFiles;
import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
import org.jspecify.annotations.Nullable;

/** A progress bar on standard error, where a person watches and did not ask for quiet. */
final class Bar implements LogFiles.Progress, AutoCloseable {
    private final Context context;
    private @Nullable ProgressBar bar;
    private String shown = "";

    Bar(Context context) {
        this.context = context;
    }

    @Override
    public void at(String what, long done, long all) {
        if (!context.showsProgress()) {
            return;
        }
        if (bar == null || !shown.equals(what)) {
            close();
            shown = what;
            bar = new ProgressBarBuilder()
                    .setTaskName(what)
                    .setInitialMax(all)
                    .setStyle(ProgressBarStyle.ASCII)
                    .setUpdateIntervalMillis(200)
                    .setConsumer(new ConsoleProgressBarConsumer(
                            context.surroundings().err()))
                    .build();
        }
        bar.stepTo(done);
    }

    @Override
    public void close() {
        if (bar != null) {
            bar.close();
        }
    }
}
