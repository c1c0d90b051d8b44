package boardside.app.cli;

/** Small turns of phrase. */
final class Words {
    private Words() {}

    /** A number of things, such as "1 round" or "2 rounds". */
    static String count(long number, String what) {
        return number + " " + what + (number == 1 ? "" : "s");
    }
}
