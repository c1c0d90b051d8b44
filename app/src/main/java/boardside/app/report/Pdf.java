package boardside.app.report;

import com.openhtmltopdf.extend.FSTextBreaker;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FSFontUseCase;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * Reports on paper. Text stays text, in an embedded font; words in pictures become outlines, so each picture's data stand
 * beside it.
 */
public final class Pdf {
    private static final String FONTS = "/net/sf/jasperreports/fonts/dejavu/";

    private static final String FAMILY = "Boardside Sans";
    private static final Set<FSFontUseCase> USES =
            EnumSet.of(FSFontUseCase.DOCUMENT, FSFontUseCase.SVG, FSFontUseCase.FALLBACK_PRE);

    /** Pixels of 1/96 inch, about 64 mm. */
    private static final int PICTURE = 240;

    /** Sizes of the letters, points: the usual, then smaller ones for what is to fit one page. */
    private static final List<Double> SIZES = List.of(8.5, 8.0, 7.5, 7.0);

    private static final String STYLE = """
            @page { margin: 10mm 13mm 12mm;
              @bottom-left { content: element(foot); }
              @bottom-right { content: counter(page) " / " counter(pages); font-size: 8pt; color: var(--ink-soft); } }
            body { font-family: 'Boardside Sans'; line-height: 1.25; color: var(--ink); margin: 0; }
            h1 { font-size: 17pt; margin: 0; }
            .about { color: var(--ink-soft); margin: 0.5mm 0 2mm; }
            .section { page-break-inside: avoid; border-top: 0.5pt solid var(--line); padding: 1.5mm 0 1.5mm; }
            h2 { font-size: 11pt; margin: 0 0 1mm; }
            p { margin: 0 0 1mm; }
            .beside { width: 100%; border-collapse: collapse; }
            .beside td { vertical-align: top; padding: 0; }
            .beside .picture { width: 66mm; padding-left: 4mm; }
            .numbers { border-collapse: collapse; margin-top: 1mm; width: 100%; }
            .numbers th, .numbers td { text-align: left; padding: 0.3mm 2.5mm 0.3mm 0; border-bottom: 0.3pt solid var(--grid);
              vertical-align: top; }
            .numbers th { color: var(--ink-soft); }
            .numbers td + td { white-space: nowrap; }
            .numbers tr { page-break-inside: avoid; }
            .note { color: var(--ink-soft); font-size: 7.5pt; }
            .foot { position: running(foot); font-size: 8pt; color: var(--ink-soft); }
            """;

    /** Sizes of paper: ISO 216 and ANSI. */
    public enum Paper {
        A4,
        LETTER;

        private String css() {
            return this == A4 ? "A4" : "letter";
        }
    }

    private Pdf() {}

    /**
     * A report as a PDF. One made for one page is set in smaller letters, down to 7 points, where it would take two.
     *
     * @param language tag of the language it is in
     * @param foot what stands at the bottom of each page
     */
    public static byte[] of(Report report, Paper paper, String language, String foot) {
        byte[] pdf = new byte[0];
        for (double size : report.onePage() ? SIZES : SIZES.subList(0, 1)) {
            pdf = of(page(report, paper, size, language, foot));
            if (!report.onePage() || pages(pdf) == 1) {
                break;
            }
        }
        return pdf;
    }

    private static int pages(byte[] pdf) {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return document.getNumberOfPages();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static byte[] of(String page) {
        XRLog.setLoggingEnabled(false);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (BatikSVGDrawer pictures = new BatikSVGDrawer()) {
            new PdfRendererBuilder()
                    .useFont(() -> font("DejaVuSansCondensed.ttf"), FAMILY, 400, FontStyle.NORMAL, true, USES)
                    .useFont(() -> font("DejaVuSansCondensed-Bold.ttf"), FAMILY, 700, FontStyle.NORMAL, true, USES)
                    .useSVGDrawer(pictures)
                    .useUnicodeLineBreaker(new AtSpaces())
                    .withHtmlContent(page, null)
                    .withProducer("Boardside")
                    .toStream(out)
                    .run();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    private static InputStream font(String file) {
        return Objects.requireNonNull(Pdf.class.getResourceAsStream(FONTS + file), file);
    }

    private static String page(Report report, Paper paper, double size, String language, String foot) {
        StringBuilder out = new StringBuilder();
        out.append("<html lang=\"").append(Picture.escape(language)).append("\"><head>");
        out.append("<title>")
                .append(Picture.escape(report.title() + ", " + report.about()))
                .append("</title>");
        out.append("<style>@page { size: ")
                .append(paper.css())
                .append("; } body { font-size: ")
                .append(size)
                .append("pt; } ")
                .append(coloured(STYLE));
        out.append("</style></head><body>");
        element(out, "div", "foot", foot);
        element(out, "h1", "", report.title());
        element(out, "p", "about", report.about());
        for (Report.Section section : report.sections()) {
            out.append("<div class=\"section\">");
            element(out, "h2", "", section.heading());
            Picture picture = section.picture();
            if (picture != null) {
                out.append("<table class=\"beside\"><tr><td>");
            }
            section.sentences().forEach(sentence -> element(out, "p", "", sentence));
            DataTable table = section.table();
            if (table != null) {
                table(out, table);
            }
            if (picture != null) {
                out.append("</td><td class=\"picture\">").append(picture.toPrint(Palette.PAPER, PICTURE, FAMILY));
                out.append("</td></tr></table>");
            }
            out.append("</div>");
        }
        out.append("<div class=\"section\">");
        report.notes().forEach(note -> element(out, "p", "note", note));
        return out.append("</div></body></html>").toString();
    }

    private static String coloured(String style) {
        String coloured = style;
        for (String name : Palette.PAPER.colours().keySet()) {
            coloured = coloured.replace("var(--" + name + ")", Palette.PAPER.colour(name));
        }
        return coloured;
    }

    private static void table(StringBuilder out, DataTable table) {
        out.append("<table class=\"numbers\"><thead>");
        row(out, "th", table.heads());
        out.append("</thead><tbody>");
        table.rows().forEach(row -> row(out, "td", row));
        out.append("</tbody></table>");
    }

    private static void row(StringBuilder out, String kind, List<String> cells) {
        out.append("<tr>");
        cells.forEach(cell -> element(out, kind, "", cell));
        out.append("</tr>");
    }

    private static void element(StringBuilder out, String name, String kind, String text) {
        out.append('<').append(name);
        if (!kind.isEmpty()) {
            out.append(" class=\"").append(kind).append('"');
        }
        out.append('>').append(Picture.escape(text)).append("</").append(name).append('>');
    }

    /** Ends lines at spaces alone: elsewhere numbers would be torn apart at their signs and points. */
    private static final class AtSpaces implements FSTextBreaker {
        private String text = "";
        private int at;

        @Override
        public void setText(String newText) {
            text = newText;
            at = 0;
        }

        /** The next place where a line may end, the end of the text being the last; then -1. */
        @Override
        public int next() {
            if (at >= text.length()) {
                return -1;
            }
            int space = text.indexOf(' ', at);
            at = space < 0 ? text.length() : space + 1;
            return at;
        }
    }
}
