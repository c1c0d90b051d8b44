package boardside.engine.skill;

/**
 * A way to throw, by the numbers of its words in a {@link Log}.
 *
 * @param bag number of the bag set
 * @param face number of the face
 * @param approach number of the approach
 * @param board number of the board
 * @param setting number of the setting
 * @param conditions number of the conditions, or {@link #USUAL}
 * @param drill number of the drill, or {@link #USUAL}
 */
record Way(int bag, int face, int approach, int board, int setting, int conditions, int drill) {
    /** At the usual mix rather than one word: of drills, or of conditions that are normal or were not recorded. */
    static final int USUAL = -1;

    Way with(Trait trait, int number) {
        return switch (trait) {
            case BAG -> new Way(number, face, approach, board, setting, conditions, drill);
            case FACE -> new Way(bag, number, approach, board, setting, conditions, drill);
            case APPROACH -> new Way(bag, face, number, board, setting, conditions, drill);
            case BOARD -> new Way(bag, face, approach, number, setting, conditions, drill);
            case SETTING -> new Way(bag, face, approach, board, number, conditions, drill);
            case CONDITIONS -> new Way(bag, face, approach, board, setting, number, drill);
        };
    }
}
