package boardside.app.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.app.report.BoardPictures.Asked;
import boardside.app.report.Pictures.Bags;
import boardside.app.report.Pictures.Chances;
import boardside.app.report.Pictures.Dated;
import boardside.app.report.Pictures.Named;
import boardside.app.report.SeasonPictures.Ending;
import boardside.engine.rules.Side;
import boardside.engine.skill.Interval;
import boardside.engine.tactics.Lying;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Element;

class PicturesTest {
    private static final DataTable NO_DATA = new DataTable(List.of("a"), List.of());
    private static final DateWords DATES = new DateWords(Locale.ENGLISH, "d MMM", "MMM", "MMM yyyy");
    private static final LocalDate DAY = LocalDate.of(2026, 1, 31);

    /** Pictures of every kind from random values. */
    private static List<Picture> some(long seed) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        int n = 1 + random.nextInt(90);
        List<Dated> points = new ArrayList<>();
        Map<LocalDate, Interval> band = new LinkedHashMap<>();
        List<Named> rows = new ArrayList<>();
        List<Bags> rounds = new ArrayList<>();
        List<Double> chances = new ArrayList<>();
        LocalDate day = DAY;
        for (int i = 0; i < n; i++) {
            points.add(new Dated(day, interval(random, 12)));
            band.put(day, interval(random, 12));
            day = day.plusDays(1 + random.nextInt(random.nextBoolean() ? 3 : 60));
            if (i < 12) {
                rows.add(new Named("bag " + i, interval(random, random.nextBoolean() ? 12 : 0.01)));
            }
            int in = random.nextInt(5);
            int on = random.nextInt(5 - in);
            rounds.add(i % 7 == 6 ? null : new Bags(in, on, random.nextInt(5 - in - on)));
            chances.add(random.nextDouble());
        }
        return List.of(
                Pictures.overTime("t", "d", NO_DATA, points, band, DATES),
                Pictures.overTime("t", "d", NO_DATA, points, Map.of(), DATES),
                Pictures.ranges("t", "d", NO_DATA, rows),
                Pictures.strip("t", "d", NO_DATA, rounds),
                Pictures.histogram("t", "d", NO_DATA, new Chances(0, chances), random.nextInt(n), "today"),
                Pictures.histogram("t", "d", NO_DATA, new Chances(3, chances), null, ""),
                SeasonPictures.endings("t", "d", NO_DATA, endings(random, 1 + random.nextInt(40)), "Place"),
                BoardPictures.situations("t", "d", NO_DATA, situations(random)));
    }

    private static List<Ending> endings(UniformRandomProvider random, int players) {
        List<Ending> endings = new ArrayList<>();
        for (int i = 0; i < players; i++) {
            double[] weights =
                    random.doubles(players).map(x -> Math.pow(x, 6) + 1e-9).toArray();
            double sum = Arrays.stream(weights).sum();
            endings.add(new Ending(
                    "somebody with a long name " + i,
                    Arrays.stream(weights).map(x -> x / sum).boxed().toList(),
                    1 + random.nextInt(players)));
        }
        return endings;
    }

    private static List<Asked> situations(UniformRandomProvider random) {
        List<Asked> asked = new ArrayList<>();
        for (int i = 0; i < 1 + random.nextInt(10); i++) {
            List<Lying> bags = new ArrayList<>();
            for (int bag = 0; bag < random.nextInt(5); bag++) {
                double y = random.nextBoolean() ? 34 * random.nextDouble() : 44 + 4 * random.nextDouble();
                bags.add(new Lying(24 * random.nextDouble() - 12, y, random.nextBoolean() ? Side.ME : Side.VERSUS));
            }
            List<Named> shots = new ArrayList<>();
            for (int shot = 0; shot < random.nextInt(9); shot++) {
                shots.add(new Named("a shot with a long name", interval(random, 100)));
            }
            asked.add(new Asked("a situation that somebody drew and named at length", bags, 24, shots));
        }
        return asked;
    }

    private static Interval interval(UniformRandomProvider random, double most) {
        double a = most * random.nextDouble();
        double b = most * random.nextDouble();
        double low = Math.min(a, b);
        double high = random.nextInt(5) == 0 ? low : Math.max(a, b);
        return new Interval((low + high) / 2, low, high);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void everythingLiesInTheViewBox(long seed) {
        for (Picture picture : some(seed)) {
            for (Shape shape : picture.shapes()) {
                for (Shape.Point point : corners(shape)) {
                    assertThat(point.x()).as(seed + ": " + shape).isBetween(0.0, (double) Picture.WIDTH);
                    assertThat(point.y()).as(seed + ": " + shape).isBetween(0.0, picture.height());
                }
            }
        }
    }

    /** What a shape reaches; a letter is taken to be 0.62 of its size wide. */
    private static List<Shape.Point> corners(Shape shape) {
        if (shape instanceof Shape.Path path) {
            return path.points();
        }
        if (shape instanceof Shape.Box box) {
            return List.of(
                    new Shape.Point(box.x(), box.y()), new Shape.Point(box.x() + box.width(), box.y() + box.height()));
        }
        if (shape instanceof Shape.Disc disc) {
            return List.of(
                    new Shape.Point(disc.x() - disc.radius(), disc.y() - disc.radius()),
                    new Shape.Point(disc.x() + disc.radius(), disc.y() + disc.radius()));
        }
        Shape.Label label = (Shape.Label) shape;
        double width = 0.62 * label.size() * label.text().length();
        double left = switch (label.anchor()) {
            case START -> label.x();
            case MIDDLE -> label.x() - width / 2;
            case END -> label.x() - width;
        };
        return List.of(new Shape.Point(left, label.y() - label.size() * 0.8), new Shape.Point(left + width, label.y()));
    }

    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23, 24})
    void textIsNeverSmallerThanTwelve(long seed) {
        for (Picture picture : some(seed)) {
            assertThat(picture.shapes())
                    .filteredOn(Shape.Label.class::isInstance)
                    .allSatisfy(
                            shape -> assertThat(((Shape.Label) shape).size()).isGreaterThanOrEqualTo(12));
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {31, 32, 33})
    void whatIsWrittenIsXmlWithoutOddNumbers(long seed) throws Exception {
        for (Picture picture : some(seed)) {
            for (String svg : List.of(picture.toPage("p"), picture.toPrint(Palette.PAPER))) {
                Element root = DocumentBuilderFactory.newInstance()
                        .newDocumentBuilder()
                        .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)))
                        .getDocumentElement();
                assertThat(root.getTagName()).isEqualTo("svg");
                assertThat(svg).doesNotContain("NaN", "Infinity", "E-");
            }
            assertThat(picture.toPrint(Palette.PAPER)).doesNotContain("class=", "var(");
        }
    }

    @Test
    void whatPeopleTypeIsEscaped() {
        String mean = "<script>\"&'\u0007";
        Picture picture = Pictures.ranges(mean, mean, NO_DATA, List.of(new Named(mean, new Interval(0.5, 0.2, 0.9))));
        for (String svg : List.of(picture.toPage("p"), picture.toPrint(Palette.PAPER))) {
            assertThat(svg).doesNotContain("<script", "\u0007").contains("&lt;script&gt;&quot;&amp;&#39; ");
        }
        assertThatThrownBy(() -> picture.toPage("a\"b")).hasMessageContaining("letters, digits and hyphens");
    }

    @Test
    void wordsAreThereForThoseWhoDoNotSee() {
        String svg = Pictures.strip("Ten rounds", "Two discs", NO_DATA, List.of(new Bags(2, 0, 0)))
                .toPage("strip");
        assertThat(svg)
                .contains("role=\"img\" aria-labelledby=\"strip-t strip-d\"")
                .contains("<title id=\"strip-t\">Ten rounds</title><desc id=\"strip-d\">Two discs</desc>");
    }

    @Test
    void inOnAndOffDifferByShape() {
        Picture picture = Pictures.strip("t", "d", NO_DATA, List.of(new Bags(1, 1, 1)));
        assertThat(picture.shapes().stream()
                        .map(shape -> shape.paint() + " " + shape.getClass().getSimpleName()))
                .containsExactly("IN Disc", "ON Box", "OFF Path", "OFF Path", "INK Label");
    }

    @ParameterizedTest
    @ValueSource(longs = {41, 42, 43, 44, 45})
    void axesAreMonotoneAndTheirMarksFew(long seed) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        for (int i = 0; i < 200; i++) {
            double low = 100 * random.nextDouble() - 50;
            double span = Math.pow(10, 6 * random.nextDouble() - 3);
            Scale scale = new Scale(low, low + span, 10, 300);
            List<Double> ticks = scale.ticks(6);
            assertThat(ticks).as("seed " + seed).hasSizeBetween(1, 7).isSorted();
            double before = 10;
            for (double tick : ticks) {
                assertThat(tick).isBetween(low - 1e-6 * span, low + span * 1.000001);
                assertThat(scale.at(tick)).isGreaterThanOrEqualTo(before);
                before = scale.at(tick);
            }
            LocalDate to = DAY.plusDays(random.nextInt(i < 100 ? 80 : 9000));
            List<Scale.DateTick> dates = Scale.dates(DAY, to, 5, DATES);
            assertThat(dates)
                    .as(DAY + " to " + to)
                    .hasSizeBetween(1, 5)
                    .allSatisfy(tick -> assertThat(tick.day()).isBetween(DAY, to));
            assertThat(dates.stream().map(Scale.DateTick::day)).isSorted().doesNotHaveDuplicates();
        }
    }

    @Test
    void theAreaOfAnEndingIsItsChance() {
        Picture picture = SeasonPictures.endings(
                "t", "d", NO_DATA, List.of(new Ending("Ada", List.of(0.5, 0.3, 0.2, 0.0), 1)), "Place");
        List<Shape.Box> boxes = picture.shapes().stream()
                .filter(Shape.Box.class::isInstance)
                .map(Shape.Box.class::cast)
                .toList();
        double all =
                boxes.stream().mapToDouble(box -> box.width() * box.height()).sum();
        assertThat(boxes).extracting(Shape.Box::paint).containsExactly(Paint.MARK, Paint.BAND, Paint.BAND);
        assertThat(boxes)
                .extracting(box -> Math.round(100 * box.width() * box.height() / all))
                .containsExactly(50L, 30L, 20L);
    }

    /** A bag 30 in from the front of a board of 48 lies below the hole's middle, which is 39 in from it. */
    @Test
    void aBlockerLiesWhereItLies() {
        Picture picture = BoardPictures.situations(
                "t",
                "d",
                NO_DATA,
                List.of(new Asked(
                        "blocker",
                        List.of(new Lying(0, 30, Side.VERSUS)),
                        24,
                        List.of(new Named("slide", new Interval(50, 25, 75))))));
        Shape.Box bag = (Shape.Box) picture.shapes().stream()
                .filter(Shape.Box.class::isInstance)
                .findFirst()
                .orElseThrow();
        List<Shape.Disc> discs = picture.shapes().stream()
                .filter(Shape.Disc.class::isInstance)
                .map(Shape.Disc.class::cast)
                .toList();
        Shape.Disc hole = discs.get(0);
        assertThat(bag.x() + bag.width() / 2).isEqualTo(hole.x());
        assertThat((bag.y() + bag.height() / 2 - hole.y()) / hole.radius()).isEqualTo(3.0);
        Shape.Path range = picture.shapes().stream()
                .filter(shape -> shape.paint() == Paint.WHISKER)
                .map(Shape.Path.class::cast)
                .findFirst()
                .orElseThrow();
        assertThat(discs.get(1).x())
                .isEqualTo((range.points().get(0).x() + range.points().get(1).x()) / 2);
    }

    @Test
    void aScaleNeedsARange() {
        assertThatThrownBy(() -> new Scale(1, 1, 0, 10)).hasMessageContaining("runs over a range");
        assertThatThrownBy(() -> new Scale(Double.NaN, 1, 0, 10)).hasMessageContaining("runs over a range");
        assertThatThrownBy(() -> Picture.number(Double.NaN)).hasMessageContaining("finite");
    }

    /** The style sheet has the rules of the paints, and the paper colours are those of the light theme. */
    @Test
    void paintsAgreeWithTheStyleSheets() throws IOException {
        assertThat(resource("boardside.css")).contains(Paint.styles());
        String light = resource("tokens.css");
        light = light.substring(0, light.indexOf('}'));
        Map<String, String> tokens = new TreeMap<>();
        Matcher matcher = Pattern.compile("--([a-z-]+): (#[0-9a-f]{6});").matcher(light);
        while (matcher.find()) {
            tokens.put(matcher.group(1), matcher.group(2));
        }
        assertThat(tokens).containsAllEntriesOf(Palette.PAPER.colours());
    }

    private static String resource(String name) throws IOException {
        try (InputStream in = PicturesTest.class.getResourceAsStream("/boardside/static/" + name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
