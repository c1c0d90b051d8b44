package boardside.engine.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.ReferenceTable;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Textbook motion: every row of {@code 11-physics.csv} that the model has a counterpart for. */
class ClosedFormsTest {
    private static final double INCH = 0.0254;

    private static List<ReferenceTable.Row> rows(String kind) {
        return ReferenceTable.read("11-physics.csv").stream()
                .filter(row -> row.text("kind").equals(kind))
                .toList();
    }

    private static double input(ReferenceTable.Row row, String name) {
        Matcher matcher = Pattern.compile("(?<!\\S)" + Pattern.quote(name) + "=(-?[0-9.]+)")
                .matcher(row.text("inputs"));
        if (!matcher.find()) {
            throw new IllegalArgumentException("no " + name + " in " + row);
        }
        return Double.parseDouble(matcher.group(1));
    }

    private static double gravity(ReferenceTable.Row row) {
        return row.text("inputs").contains("g=") ? input(row, "g") : 9.80665;
    }

    /** The row's angle; a board's is asin((12 - front) / 48), taken to six decimals but printed with fewer. */
    private static double angle(ReferenceTable.Row row) {
        double printed = input(row, "angle");
        for (double front : new double[] {2.5, 3, 3.5, 4}) {
            double exact = Math.toDegrees(Math.asin((12 - front) / 48));
            if (Math.abs(exact - printed) < 1e-4) {
                return Math.rint(exact * 1e6) / 1e6;
            }
        }
        return printed;
    }

    private static Slide slide(double mu, double degrees, double g) {
        Slide slide = new Slide();
        double angle = Math.toRadians(degrees);
        slide.ground(mu, g * Math.sin(angle), g * Math.cos(angle));
        return slide;
    }

    static Stream<ReferenceTable.Row> inclines() {
        return rows("incline").stream();
    }

    @ParameterizedTest
    @MethodSource("inclines")
    void slidesOnAnIncline(ReferenceTable.Row row) {
        if (row.text("case").equals("openstax-skier")) {
            // Friction 45.0 N on 62 kg: the coefficient at which the model's friction force is that.
            double mu = row.number("value");
            assertThat(62 * slide(mu, 25, 9.80).grip()).isEqualTo(45.0, within(4e-6));
            return;
        }
        if (row.text("case").equals("openstax-truck")) {
            Slide slide = slide(0.62, 0, 9.81);
            slide.start(0, 0, 0, 0, row.number("value"));
            slide.atStop();
            assertThat(slide.y()).isEqualTo(10, within(1e-7));
            return;
        }
        if (row.text("case").equals("angle-of-repose")) {
            double mu = row.number("value");
            assertThat(slide(mu * (1 + 1e-5), angle(row), 9.8).holds()).isTrue();
            assertThat(slide(mu * (1 - 1e-5), angle(row), 9.8).holds()).isFalse();
            return;
        }
        double g = gravity(row);
        Slide slide = slide(input(row, "mu"), angle(row), g);
        if (row.text("case").equals("openstax-snowboard")) {
            slide.start(0, 0, 0, 0, 0);
            slide.at(1);
            assertThat(-slide.vy()).isEqualTo(row.number("value"), within(1e-8));
            return;
        }
        double v0 = input(row, "v0");
        slide.start(0, 0, 0, 0, v0);
        double stop = slide.stopTime();
        slide.atStop();
        double height = slide.y();
        switch (row.text("quantity")) {
            case "deceleration going up" -> assertThat(v0 / stop).isEqualTo(row.number("value"), within(6e-9));
            case "distance to stop going up" -> assertThat(height).isEqualTo(row.number("value"), within(6e-9));
            case "time to stop going up" -> assertThat(stop).isEqualTo(row.number("value"), within(6e-9));
            case "stays at rest after stopping" ->
                assertThat(slide.holds()).isEqualTo(row.text("value").equals("yes"));
            case "acceleration sliding back" -> {
                slide.start(0, 0, height, 0, 0);
                slide.at(1);
                assertThat(-slide.vy()).isEqualTo(row.number("value"), within(6e-9));
            }
            case "speed back at the start" -> {
                slide.start(0, 0, height, 0, 0);
                slide.at(slide.leaves(1, 10));
                assertThat(slide.y()).isEqualTo(0, within(1e-12));
                assertThat(-slide.vy()).isEqualTo(row.number("value"), within(6e-9));
            }
            default -> throw new IllegalArgumentException(row.toString());
        }
    }

    static Stream<ReferenceTable.Row> projectiles() {
        return rows("projectile").stream()
                .filter(row -> row.text("inputs").contains("angle=")
                        && row.text("inputs").contains("v="));
    }

    /** In still vacuum onto a level board; g is scaled by scaling lengths and speeds with it. */
    @ParameterizedTest
    @MethodSource("projectiles")
    void fliesAsTextbooksSay(ReferenceTable.Row row) {
        double g = gravity(row);
        // Lengths are measured in units in which the row's g is standard gravity.
        double unit = Simulator.GRAVITY / g;
        double v = input(row, "v") * unit;
        double fall = input(row, "launch_minus_landing") * unit;
        // A level board lies at 12 in; the start is that much higher or lower.
        Flight flight = new Flight(new Board(24, 0), Bag.of(0), Air.NONE);
        double range = rangeOf(flight, v, input(row, "angle"), fall);
        double value = row.number("value");
        switch (row.text("quantity")) {
            case "time of flight" -> assertThat(flight.time()).isEqualTo(value, within(1e-7));
            case "horizontal range" -> assertThat(range / unit).isEqualTo(value, within(1e-6));
            case "landing speed" -> assertThat(flight.flightSpeed() / unit).isEqualTo(value, within(1e-7));
            case "landing angle below level" -> assertThat(flight.flightAngle()).isEqualTo(value, within(1e-6));
            case "apex above launch", "time to apex", "horizontal distance at apex" -> {
                // Back at the height of launch, half the time and way are behind it at the apex: h = g t^2 / 2.
                double back = rangeOf(flight, v, input(row, "angle"), 0);
                double half = flight.time() / 2;
                double apex = switch (row.text("quantity")) {
                    case "time to apex" -> half;
                    case "apex above launch" -> g * half * half / 2;
                    default -> back / 2 / unit;
                };
                assertThat(apex).isEqualTo(value, within(1e-6));
            }
            default -> throw new IllegalArgumentException(row.toString());
        }
    }

    private static double rangeOf(Flight flight, double v, double angle, double fall) {
        double far = 1000;
        flight.fly(v, angle, 0, 0, 12 + fall / INCH, far / INCH, 0);
        return far + flight.y() * INCH;
    }

    static Stream<ReferenceTable.Row> collisions() {
        return Stream.concat(rows("collision-1d").stream(), rows("collision-2d").stream());
    }

    @ParameterizedTest
    @MethodSource("collisions")
    void bagsMeetAsTextbookDiscsDo(ReferenceTable.Row row) {
        double[] vx;
        double[] vy = {0, 0};
        double[] mass;
        double nx = 1;
        double ny = 0;
        if (row.text("case").equals("openstax-wreck")) {
            // Locked together after the blow: dead, and no slip across the line of centres.
            mass = new double[] {1200, 3000};
            vx = new double[] {60, 0};
            vy = new double[] {0, 40};
            nx = Math.sqrt(0.5);
            ny = -Math.sqrt(0.5);
            Impacts impacts = new Impacts(new Contact(0, 5, 1e-12, 0));
            impacts.add(0, 1, nx, ny);
            impacts.solve(vx, vy, new double[] {1 / mass[0], 1 / mass[1]});
            double value = row.text("quantity").equals("speed after")
                    ? Math.hypot(vx[0], vy[0]) / 3.6
                    : Math.toDegrees(Math.atan2(vy[1], vx[1]));
            assertThat(value).isEqualTo(row.number("value"), within(1e-7));
            return;
        }
        double restitution = input(row, "restitution");
        mass = new double[] {input(row, "m1"), input(row, "m2")};
        if (row.text("kind").equals("collision-1d")) {
            double[] before = {input(row, "v1"), input(row, "v2")};
            vx = before.clone();
            if (vx[0] < vx[1]) {
                nx = -1;
            }
        } else {
            double[] v1 = pair(row, "v1");
            double[] v2 = pair(row, "v2");
            double[] line = pair(row, "line of centres");
            vx = new double[] {v1[0], v2[0]};
            vy = new double[] {v1[1], v2[1]};
            nx = line[0];
            ny = line[1];
        }
        double energy = energy(mass, vx, vy);
        double momentum = mass[0] * (vx[0] * nx + vy[0] * ny);
        Impacts impacts = new Impacts(new Contact(restitution, 0, 1e-12, 0));
        impacts.add(0, 1, nx, ny);
        impacts.solve(vx, vy, new double[] {1 / mass[0], 1 / mass[1]});
        double value = switch (row.text("quantity")) {
            case "v1 after", "v1x after" -> vx[0];
            case "v2 after", "v2x after" -> vx[1];
            case "v1y after" -> vy[0];
            case "v2y after" -> vy[1];
            case "kinetic energy lost" -> energy - energy(mass, vx, vy);
            case "impulse" -> momentum - mass[0] * (vx[0] * nx + vy[0] * ny);
            default -> throw new IllegalArgumentException(row.toString());
        };
        assertThat(value).isEqualTo(row.number("value"), within(6e-9));
    }

    private static double energy(double[] mass, double[] vx, double[] vy) {
        return (mass[0] * (vx[0] * vx[0] + vy[0] * vy[0]) + mass[1] * (vx[1] * vx[1] + vy[1] * vy[1])) / 2;
    }

    private static double[] pair(ReferenceTable.Row row, String name) {
        Matcher matcher = Pattern.compile(Pattern.quote(name) + "=\\((-?[0-9.]+);(-?[0-9.]+)\\)")
                .matcher(row.text("inputs"));
        if (!matcher.find()) {
            throw new IllegalArgumentException("no " + name + " in " + row);
        }
        return new double[] {Double.parseDouble(matcher.group(1)), Double.parseDouble(matcher.group(2))};
    }

    static Stream<ReferenceTable.Row> holes() {
        return rows("hole-capture").stream().filter(row -> row.text("quantity").contains("sqrt(g/(2r))"));
    }

    /**
     * Holmes's greatest speed of a ball that falls freely while it crosses is a length over the time to fall its radius: our
     * rule, with the bag's drop for the radius, and the whole chord of the centre for the length.
     */
    @ParameterizedTest
    @MethodSource("holes")
    void fallsAsFastAsABallIntoAHole(ReferenceTable.Row row) {
        boolean centre = row.text("case").equals("holmes-centre");
        double hole = 0.054;
        double ball = 0.02135;
        double offset = centre ? 0 : Double.parseDouble(row.text("inputs").replaceAll(".*offset=([0-9.]+) m.*", "$1"));
        double length =
                Math.sqrt(hole * hole - offset * offset) + Math.sqrt((hole - ball) * (hole - ball) - offset * offset);
        assertThat(length / Simulator.fallTime(ball, 9.81)).isEqualTo(row.number("value"), within(6e-9));
    }
}
