package boardside.app.account;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.LuminanceSource;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What is drawn is read back by zxing's reader, as a camera would from the picture. */
class QrCodeTest {
    private static final String LINK = "http://192.168.178.23:8027/pair?code=H7KQ2M";
    private static final int SCALE = 8;

    @Test
    void aCameraReadsThePathOnThePage() throws Exception {
        QrCode code = QrCode.of(LINK);
        boolean[][] dark = new boolean[code.size()][code.size()];
        Matcher run = Pattern.compile("M(\\d+) (\\d+)h(\\d+)v1h-(\\d+)z").matcher(code.path());
        int end = 0;
        while (run.find()) {
            assertThat(run.start()).isEqualTo(end);
            assertThat(run.group(3)).isEqualTo(run.group(4));
            int x = Integer.parseInt(run.group(1));
            Arrays.fill(dark[Integer.parseInt(run.group(2))], x, x + Integer.parseInt(run.group(3)), true);
            end = run.end();
        }
        assertThat(end).isEqualTo(code.path().length());
        assertThat(read(dark)).isEqualTo(LINK);
    }

    @Test
    void aCameraReadsTheTerminal() throws Exception {
        QrCode code = QrCode.of(LINK);
        String[] lines = code.halfBlocks().replaceAll("\u001b\\[[0-9;]*m", "").split("\n");
        assertThat(lines).hasSize((code.size() + 1) / 2).allMatch(line -> line.length() == code.size());
        assertThat(lines.length).as("fits a terminal of 24 lines").isLessThanOrEqualTo(22);
        boolean[][] dark = new boolean[lines.length * 2][code.size()];
        for (int y = 0; y < dark.length; y++) {
            for (int x = 0; x < code.size(); x++) {
                char block = lines[y / 2].charAt(x);
                dark[y][x] = block == '\u2588' || block == (y % 2 == 0 ? '\u2580' : '\u2584');
            }
        }
        assertThat(read(dark)).isEqualTo(LINK);
    }

    private static String read(boolean[][] dark) throws Exception {
        int width = dark[0].length * SCALE;
        int height = dark.length * SCALE;
        int[] pixels = new int[width * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                pixels[y * width + x] = dark[y / SCALE][x / SCALE] ? 0x000000 : 0xffffff;
            }
        }
        LuminanceSource source = new RGBLuminanceSource(width, height, pixels);
        return new QRCodeReader()
                .decode(new BinaryBitmap(new HybridBinarizer(source)))
                .getText();
    }
}
