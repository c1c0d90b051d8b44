package boardside.engine.tactics;

import boardside.engine.rules.Word;

/** A part of the board to put a bag: a depth and a lane. Written {@code 2-left} or {@code back-middle}. */
public record Target(Depth depth, Lane lane) {
    /**
     * The part of the board a point lies in.
     *
     * @param width of the board, inches, above 0
     */
    public static Target at(Spot spot, double width) {
        return new Target(Depth.of(spot.y()), Lane.of(spot.x(), width));
    }

    /**
     * A target from its text.
     *
     * @throws IllegalArgumentException saying how targets are written
     */
    public static Target parse(String text) {
        int dash = text.indexOf('-');
        if (dash < 0) {
            throw new IllegalArgumentException(
                    "\"" + text + "\" is no target; write depth and lane, such as 2-left or back-middle");
        }
        return new Target(Word.of(Depth.class, text.substring(0, dash)), Word.of(Lane.class, text.substring(dash + 1)));
    }

    /** As it is written. */
    public String text() {
        return depth.word() + "-" + lane.word();
    }

    /**
     * Whether a bag whose middle rests there lies in it; one that has fallen in lies nowhere.
     *
     * @param width of the board, inches, above 0
     */
    public boolean holds(Spot rest, double width) {
        return !rest.inHole() && at(rest, width).equals(this);
    }

    /** Its middle, which is where a bag is aimed. */
    public Spot centre(double width) {
        return new Spot(lane.centre(width), depth.centre());
    }

    /** The same on the other side. */
    public Target mirrored() {
        return new Target(depth, lane.mirrored());
    }
}
