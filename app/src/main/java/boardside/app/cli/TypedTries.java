package boardside.app.cli;

import boardside.app.practice.Board;
import boardside.app.practice.Exercise;
import boardside.app.practice.Try;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Outcome;
import boardside.engine.rules.Side;
import boardside.engine.rules.Word;
import boardside.engine.tactics.Depth;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Spot;
import boardside.engine.tactics.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Tries as they are typed. A placement is a target and what came of it: {@code 2-left:yes}, {@code 2-left:no}, or where the
 * bag ended, which says whether it worked: {@code 2-left:3-left}. A situation is a shot, with its target if it is a block,
 * and whether it worked; where the bag ended may follow: {@code cut-left:yes}, {@code block@1-middle:no:short}.
 */
final class TypedTries {
    private static final Set<String> MISSES = Set.of("left", "right", "short", "long");
    private static final Pattern SPOT = Pattern.compile("(-?\\d+(?:\\.\\d+)?),(\\d+(?:\\.\\d+)?)");
    private static final String ENDS = "in, on, off, left, right, short, long, a part of the board such as 3-left, or"
            + " inches from its centre line and front edge such as -8,27";

    private final Drill drill;
    private final Position position;
    private final String situation;
    private final boolean byHand;
    private final Try.How how;
    private final double width;

    /**
     * @param position what lies on the board before each try
     * @param situation its id, or empty
     * @param byHand whether it was laid there by hand
     */
    TypedTries(Drill drill, Position position, String situation, boolean byHand, Try.How how) {
        this.drill = drill;
        this.position = position;
        this.situation = situation;
        this.byHand = byHand;
        this.how = how;
        this.width = Board.usualWidth(how.board());
    }

    /** The tries, in order; what is wrong with one is added to the faults. */
    List<Try.Played> read(List<String> typed, List<String> faults) {
        List<Try.Played> tries = new ArrayList<>();
        for (String one : typed) {
            try {
                tries.add(drill == Drill.PLACEMENT ? placement(one) : shot(one));
            } catch (IllegalArgumentException e) {
                faults.add("try \"" + one + "\": " + e.getMessage());
            }
        }
        return tries;
    }

    private Try.Played placement(String typed) {
        String[] parts = typed.split(":", -1);
        if (parts.length != 2) {
            throw new IllegalArgumentException(
                    "write the target and where the bag ended, such as 2-left:3-left, or 2-left:yes");
        }
        Target target = Target.parse(parts[0]);
        Try.Rest rest = parts[1].equals("yes") || parts[1].equals("no") ? null : end(parts[1]);
        Spot spot = rest == null ? null : rest.spot();
        if (rest != null && rest.outcome() == Outcome.ON && spot == null) {
            throw new IllegalArgumentException("say where on the board it lies, such as 3-left");
        }
        boolean worked = rest == null ? parts[1].equals("yes") : spot != null && target.holds(spot, width);
        return played(target.depth() == Depth.BACK ? Shot.BACK_BLOCK : Shot.BLOCK, target, worked, rest);
    }

    private Try.Played shot(String typed) {
        String[] parts = typed.split(":", -1);
        if (parts.length < 2 || parts.length > 3 || !parts[1].equals("yes") && !parts[1].equals("no")) {
            throw new IllegalArgumentException(
                    "write the shot and whether it worked, such as cut-left:yes, or where the bag ended too, such as"
                            + " cut-left:no:short");
        }
        String[] called = parts[0].split("@", 2);
        Shot shot = Word.of(Shot.class, called[0]);
        if (shot.placed() && called.length < 2) {
            throw new IllegalArgumentException("say where the block is to lie, such as " + shot.word() + "@"
                    + (shot == Shot.BLOCK ? "1-middle" : "back-middle"));
        }
        if (!shot.placed() && called.length == 2) {
            throw new IllegalArgumentException(
                    "a " + shot.word() + " is not to lie anywhere; leave out what follows @");
        }
        Target target = called.length < 2 ? null : Target.parse(called[1]);
        return played(shot, target, parts[1].equals("yes"), parts.length < 3 ? null : end(parts[2]));
    }

    private Try.Played played(Shot shot, @Nullable Target target, boolean worked, Try.@Nullable Rest rest) {
        return new Try.Played(Side.ME, shot, target, position, situation, null, byHand, worked, rest, how, "");
    }

    private Try.Rest end(String typed) {
        if (typed.equals("in")) {
            return new Try.Rest(Outcome.IN, "", null);
        }
        if (typed.equals("on")) {
            return new Try.Rest(Outcome.ON, "", null);
        }
        if (typed.equals("off") || MISSES.contains(typed)) {
            return new Try.Rest(Outcome.OFF, typed.equals("off") ? "" : typed, null);
        }
        Matcher inches = SPOT.matcher(typed);
        if (inches.matches()) {
            return on(new Spot(Double.parseDouble(inches.group(1)), Double.parseDouble(inches.group(2))));
        }
        Target part;
        try {
            part = Target.parse(typed);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException("\"" + typed + "\" is no place to end; write " + ENDS, e);
        }
        return on(part.centre(width));
    }

    private static Try.Rest on(Spot spot) {
        if (spot.inHole()) {
            throw new IllegalArgumentException("a bag there has fallen in; write in");
        }
        return new Try.Rest(Outcome.ON, "", spot);
    }

    /** What the run is a go at: each target or shot once, in the order tried. */
    Exercise exercise(List<Try.Played> tries, String name) {
        List<Target> targets = new ArrayList<>();
        List<Exercise.Step> shots = new ArrayList<>();
        for (Try.Played played : tries) {
            Target target = played.target();
            if (drill == Drill.SITUATION) {
                shots.add(new Exercise.Step(played.shot(), target, position));
            } else if (target != null) {
                targets.add(target);
            }
        }
        return new Exercise(
                targets.stream().distinct().toList(),
                shots.stream().distinct().toList(),
                false,
                Exercise.Call.MINE,
                null,
                null,
                situation,
                name,
                "");
    }
}
