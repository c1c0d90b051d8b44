package boardside.app.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.app.report.Report.Section;
import boardside.engine.skill.Interval;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What PDFBox reads back. */
class PdfTest {
    private static final double MM = 72 / 25.4;

    private static Report report(int rows) {
        DataTable table = new DataTable(
                List.of("Bag set", "Points"),
                IntStream.range(0, rows)
                        .mapToObj(i -> List.of("Set <" + i + "> & more", i + ".5 (\u22120.3\u2013+0.4)"))
                        .toList());
        Picture picture = Pictures.ranges(
                "Ranges",
                "Two of them",
                table,
                List.of(
                        new Pictures.Named("Plum Kettle", new Interval(6, 5, 7)),
                        new Pictures.Named("Brass Teapot", new Interval(5, 4, 6))));
        return new Report(
                "A report",
                "Wren \u2018Ren\u2019 Tallow, \u017Dofie",
                List.of(
                        new Section("Bags", List.of("Say \u201C<b>this</b>\u201D & that."), table, picture),
                        new Section("Words", List.of("Nothing more."), null, null)),
                List.of("A note."),
                false);
    }

    private static PDDocument read(Report report, Pdf.Paper paper) throws IOException {
        return Loader.loadPDF(Pdf.of(report, paper, "en", "Boardside"));
    }

    @Test
    void textIsTextAsItWasWritten() throws IOException {
        try (PDDocument pdf = read(report(2), Pdf.Paper.A4)) {
            assertThat(pdf.getNumberOfPages()).isEqualTo(1);
            assertThat(pdf.getDocumentInformation().getTitle())
                    .isEqualTo("A report, Wren \u2018Ren\u2019 Tallow, \u017Dofie");
            assertThat(new PDFTextStripper().getText(pdf))
                    .contains("Say \u201C<b>this</b>\u201D & that.")
                    .contains("Set <1> & more")
                    .contains("1.5 (\u22120.3\u2013+0.4)")
                    .contains("Wren \u2018Ren\u2019 Tallow, \u017Dofie")
                    .contains("A note.")
                    .contains("1 / 1");
        }
    }

    @ParameterizedTest
    @EnumSource(Pdf.Paper.class)
    void everyFontIsEmbedded(Pdf.Paper paper) throws IOException {
        List<PDFont> fonts = new ArrayList<>();
        try (PDDocument pdf = read(report(80), paper)) {
            new PDFTextStripper() {
                @Override
                protected void processTextPosition(TextPosition text) {
                    fonts.add(text.getFont());
                }
            }.getText(pdf);
            assertThat(fonts).isNotEmpty().allMatch(PDFont::isEmbedded);
        }
    }

    /** ISO 216: A4 is 210 by 297 mm. ANSI/ASME Y14.1: Letter (A) is 8.5 by 11 inches. */
    @ParameterizedTest
    @EnumSource(Pdf.Paper.class)
    void pagesHaveTheSizeOfTheirPaper(Pdf.Paper paper) throws IOException {
        double width = paper == Pdf.Paper.A4 ? 210 * MM : 8.5 * 72;
        double height = paper == Pdf.Paper.A4 ? 297 * MM : 11 * 72;
        try (PDDocument pdf = read(report(150), paper)) {
            assertThat(pdf.getNumberOfPages()).isGreaterThan(1);
            for (PDPage page : pdf.getPages()) {
                PDRectangle box = page.getMediaBox();
                assertThat((double) box.getWidth()).isCloseTo(width, within(0.1));
                assertThat((double) box.getHeight()).isCloseTo(height, within(0.1));
            }
        }
    }

    @Test
    void thePictureIsDrawnBesideItsWords() throws IOException {
        try (PDDocument pdf = read(report(2), Pdf.Paper.A4)) {
            BufferedImage image = new PDFRenderer(pdf).renderImageWithDPI(0, 72);
            assertThat(marks(image)).isGreaterThan(20);
        }
        Report without =
                new Report("A report", "", List.of(new Section("Bags", List.of("x"), null, null)), List.of(), false);
        try (PDDocument pdf = read(without, Pdf.Paper.A4)) {
            assertThat(marks(new PDFRenderer(pdf).renderImageWithDPI(0, 72))).isZero();
        }
    }

    @Test
    void linesBetweenSectionsAreDrawn() throws IOException {
        try (PDDocument pdf = read(report(2), Pdf.Paper.A4)) {
            BufferedImage image = new PDFRenderer(pdf).renderImageWithDPI(0, 288);
            int longest = 0;
            for (int y = 0; y < image.getHeight(); y++) {
                int marked = 0;
                for (int x = 0; x < image.getWidth(); x++) {
                    marked += (image.getRGB(x, y) & 0xff) < 0xe0 ? 1 : 0;
                }
                longest = Math.max(longest, marked);
            }
            // Margins are 13 mm a side.
            assertThat((double) longest / image.getWidth()).isGreaterThan(0.8);
        }
    }

    /** Points in about the colour of marks. */
    private static int marks(BufferedImage image) {
        int found = 0;
        for (int x = 0; x < image.getWidth(); x++) {
            for (int y = 0; y < image.getHeight(); y++) {
                int rgb = image.getRGB(x, y);
                int red = rgb >> 16 & 0xff;
                int green = rgb >> 8 & 0xff;
                int blue = rgb & 0xff;
                found += red < 60 && green > red + 30 && blue > red + 30 ? 1 : 0;
            }
        }
        return found;
    }

    @Test
    void oneMadeForOnePageIsSetSmaller() throws IOException {
        Report usual = report(48);
        Report fitted = new Report(usual.title(), usual.about(), usual.sections(), usual.notes(), true);
        try (PDDocument two = read(usual, Pdf.Paper.LETTER);
                PDDocument one = read(fitted, Pdf.Paper.LETTER)) {
            assertThat(two.getNumberOfPages()).isEqualTo(2);
            assertThat(one.getNumberOfPages()).isEqualTo(1);
        }
    }

    @Test
    void plainTextHasTablesInColumns() {
        assertThat(report(2).toText().lines().toList())
                .containsSequence(
                        "  Bag set         Points",
                        "  Set <0> & more  0.5 (\u22120.3\u2013+0.4)",
                        "  Set <1> & more  1.5 (\u22120.3\u2013+0.4)");
    }
}
