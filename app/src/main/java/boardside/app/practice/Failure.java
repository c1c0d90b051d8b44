package boardside.app.practice;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a caller asked for and could not have, in words for the person who asked. Everything else that goes wrong is a
 * fault of the program.
 */
public abstract sealed class Failure extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final List<String> faults;

    private Failure(List<String> faults) {
        super(String.join("\n", faults));
        this.faults = List.copyOf(faults);
    }

    /** The kinds of failure, for those who answer each in their own way. */
    public enum Kind {
        BAD_INPUT,
        NOT_FOUND,
        STORE_UNUSABLE
    }

    /** What kind this one is. */
    public abstract Kind kind();

    /** One line a fault: what, where, what to do. */
    public List<String> faults() {
        return faults;
    }

    /** The input breaks a rule; nothing was stored. */
    public static final class BadInput extends Failure {
        private static final long serialVersionUID = 1L;

        @Override
        public Kind kind() {
            return Kind.BAD_INPUT;
        }

        /** One fault. */
        public BadInput(String fault) {
            super(List.of(fault));
        }

        /** Several faults, at least one. */
        public BadInput(List<String> faults) {
            super(faults);
        }
    }

    /** What was asked for does not exist. */
    public static final class NotFound extends Failure {
        private static final long serialVersionUID = 1L;

        @Override
        public Kind kind() {
            return Kind.NOT_FOUND;
        }

        /** Says what was looked for. */
        public NotFound(String fault) {
            super(List.of(fault));
        }
    }

    /** The store cannot be opened or read. */
    public static final class StoreUnusable extends Failure {
        private static final long serialVersionUID = 1L;

        private final boolean damaged;

        @Override
        public Kind kind() {
            return Kind.STORE_UNUSABLE;
        }

        /** Says which store, why, and what to do. */
        public StoreUnusable(String fault) {
            super(List.of(fault));
            this.damaged = false;
        }

        /** The same, with what led to it. */
        public StoreUnusable(String fault, @Nullable Throwable cause) {
            this(fault, cause, false);
        }

        private StoreUnusable(String fault, @Nullable Throwable cause, boolean damaged) {
            super(List.of(fault));
            this.damaged = damaged;
            initCause(cause);
        }

        /** One whose file is damaged, and was left as it is. */
        public static StoreUnusable damaged(String fault, @Nullable Throwable cause) {
            return new StoreUnusable(fault, cause, true);
        }

        /** Whether the file is damaged, so that it can be set aside for a backup. */
        public boolean damaged() {
            return damaged;
        }
    }
}
