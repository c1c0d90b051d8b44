package boardside.app.account;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import java.util.Map;

/** A link as a picture that phones read, with the four light modules around it that ISO/IEC 18004 asks for. */
public final class QrCode {
    private static final int QUIET = 4;

    // Black on white whatever the terminal's own colours are: 256-colour codes, which themes leave alone.
    private static final String COLOURS = "\u001b[38;5;16;48;5;231m";
    private static final String RESET = "\u001b[0m";

    private final BitMatrix modules;

    private QrCode(BitMatrix modules) {
        this.modules = modules;
    }

    /** The picture of a text. */
    public static QrCode of(String text) {
        try {
            return new QrCode(new QRCodeWriter()
                    .encode(
                            text,
                            BarcodeFormat.QR_CODE,
                            0,
                            0,
                            Map.of(
                                    EncodeHintType.MARGIN,
                                    QUIET,
                                    EncodeHintType.ERROR_CORRECTION,
                                    ErrorCorrectionLevel.M)));
        } catch (WriterException e) {
            throw new IllegalArgumentException("too long for a QR code: " + text, e);
        }
    }

    /** Modules on a side, the quiet ones included. */
    public int size() {
        return modules.getWidth();
    }

    /** Whether a module is dark; 0-indexed from the top left. */
    public boolean dark(int x, int y) {
        return y < size() && modules.get(x, y);
    }

    /** The dark modules as an SVG path, one unit a module. */
    public String path() {
        StringBuilder path = new StringBuilder();
        for (int y = 0; y < size(); y++) {
            for (int x = 0; x < size(); x++) {
                int start = x;
                while (x < size() && dark(x, y)) {
                    x++;
                }
                if (x > start) {
                    path.append('M')
                            .append(start)
                            .append(' ')
                            .append(y)
                            .append('h')
                            .append(x - start)
                            .append("v1h-");
                    path.append(x - start).append('z');
                }
            }
        }
        return path.toString();
    }

    /** For a terminal: two rows of modules a line. */
    public String halfBlocks() {
        StringBuilder text = new StringBuilder();
        for (int y = 0; y < size(); y += 2) {
            text.append(COLOURS);
            for (int x = 0; x < size(); x++) {
                boolean upper = dark(x, y);
                boolean lower = dark(x, y + 1);
                text.append(upper ? lower ? '\u2588' : '\u2580' : lower ? '\u2584' : ' ');
            }
            text.append(RESET).append('\n');
        }
        return text.toString();
    }
}
