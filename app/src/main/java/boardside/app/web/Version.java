package boardside.app.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** The version this program was built as. */
public final class Version {
    private Version() {}

    /** Its number, such as 0.1.0. */
    public static String number() {
        Properties properties = new Properties();
        try (InputStream in = Version.class.getResourceAsStream("/boardside/version.properties")) {
            properties.load(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return properties.getProperty("version", "");
    }
}
