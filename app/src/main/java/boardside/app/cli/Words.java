package boardside.app.cli;

/** Small turns of phrase. */
final class Words {
    private Words() {}

    /** A number of things, such as "1 round" or "2 rounds". */
    static String count(long number, String what) {
        return count(number, what, what + "s");
    }

    /** The same with a plural of its own. */
    static String count(long number, String one, String several) {
        return number + " " + (number == 1 ? one : several);
    }
}
