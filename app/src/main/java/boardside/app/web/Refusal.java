package boardside.app.web;

/** A request that cannot be answered, with what the reader can do about it; shown as a page or as JSON. */
final class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final int status;

    Refusal(int status, String message) {
        super(message);
        this.status = status;
    }

    int status() {
        return status;
    }
}
