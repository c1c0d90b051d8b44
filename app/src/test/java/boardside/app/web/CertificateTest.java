package boardside.app.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.app.practice.Failure;
import boardside.app.record.Records;
import java.net.InetAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.KeyStore;
import java.security.cert.X509Certificate;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Base64;
import java.util.List;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CertificateTest {
    private static final String NAME = "boardside";

    @TempDir
    private Path folder;

    private Network house;
    private Certificate made;

    @BeforeEach
    void make() throws Exception {
        house = new Network(List.of(InetAddress.getByName("127.0.0.2")), List.of("porch"));
        made = Certificate.homeMade(folder, house, Instant.now());
    }

    private static X509Certificate leaf(Certificate certificate) throws Exception {
        return (X509Certificate)
                certificate.keys().getCertificate(certificate.keys().aliases().nextElement());
    }

    @Test
    void theFileIsForThisUserAlone() throws Exception {
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve(Certificate.FILE))))
                .isEqualTo("rw-------");
        try (var files = Files.list(folder)) {
            assertThat(files).as("nothing left over").hasSize(1);
        }
    }

    @Test
    void itIsKeptWhileItFits() throws Exception {
        Certificate again = Certificate.homeMade(folder, house, Instant.now().plus(Duration.ofDays(790)));
        assertThat(leaf(again)).isEqualTo(leaf(made));
        assertThat(leaf(Certificate.homeMade(folder, Network.NONE, Instant.now())))
                .as("fewer addresses than it covers")
                .isEqualTo(leaf(made));
    }

    @Test
    void itIsMadeAnewForANewAddressAndBeforeItExpires() throws Exception {
        Network moved = new Network(List.of(InetAddress.getByName("192.0.2.7")), List.of("porch"));
        Certificate another = Certificate.homeMade(folder, moved, Instant.now());
        assertThat(leaf(another)).isNotEqualTo(leaf(made));
        assertThat(leaf(another).getSubjectAlternativeNames().toString()).contains("192.0.2.7", "porch", "localhost");
        Certificate late = Certificate.homeMade(folder, moved, Instant.now().plus(Duration.ofDays(800)));
        assertThat(leaf(late)).isNotEqualTo(leaf(another));
    }

    @Test
    void aBrokenFileIsToldWithWhatToDo() throws Exception {
        Files.writeString(folder.resolve(Certificate.FILE), "not a key store");
        assertThatThrownBy(() -> Certificate.homeMade(folder, house, Instant.now()))
                .isInstanceOf(Failure.BadInput.class)
                .hasMessageContaining("delete that file");
    }

    /** Java's own client checks that certificate and address belong together. */
    @Test
    void aClientThatTrustsItReachesEveryAddress() throws Exception {
        try (Records records = Records.open(folder.resolve("store.db").toString());
                Server server = Wire.serverOfAHouse(
                        records, Clock.systemDefaultZone(), new ServerOptions(0, true, made, false))) {
            HttpClient client = HttpClient.newBuilder().sslContext(trusting()).build();
            for (String host : List.of("localhost", "127.0.0.1", "127.0.0.2")) {
                URI page = URI.create("https://" + host + ":" + server.port() + "/pair");
                HttpResponse<String> answer =
                        client.send(HttpRequest.newBuilder(page).build(), HttpResponse.BodyHandlers.ofString());
                assertThat(answer.statusCode()).as(host).isEqualTo(200);
                assertThat(answer.headers().firstValue("set-cookie").orElseThrow())
                        .as(host)
                        .contains("; Secure")
                        .contains("; HttpOnly");
            }
            assertThat(server.invite().orElseThrow().link()).startsWith("https://127.0.0.2:" + server.port());
        }
    }

    private SSLContext trusting() throws Exception {
        KeyStore trusted = KeyStore.getInstance("PKCS12");
        trusted.load(null, null);
        trusted.setCertificateEntry("made", leaf(made));
        TrustManagerFactory managers = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
        managers.init(trusted);
        SSLContext context = SSLContext.getInstance("TLS");
        context.init(null, managers.getTrustManagers(), null);
        return context;
    }

    @Test
    void plainRequestsAreSentOnToHttps() throws Exception {
        try (Records records = Records.open(folder.resolve("store.db").toString());
                Server server = Wire.serverOfAHouse(
                        records, Clock.systemDefaultZone(), new ServerOptions(0, true, made, false))) {
            Wire answer = Wire.get(Wire.ELSEWHERE, server.port(), "/pair?code=ABC");
            assertThat(answer.status()).isEqualTo(308);
            assertThat(answer.header("location")).isEqualTo("https://127.0.0.2:" + server.port() + "/pair?code=ABC");
            assertThat(answer.header("set-cookie")).isEmpty();
            Wire forged = Wire.get(Wire.HERE, server.port(), "/", "Host: evil.example");
            assertThat(forged.status()).isEqualTo(421);
            assertThat(forged.header("location")).isEmpty();
        }
    }

    private String pem() throws Exception {
        return block("CERTIFICATE", leaf(made).getEncoded())
                + block(
                        "PRIVATE KEY",
                        made.keys().getKey(NAME, made.password().toCharArray()).getEncoded());
    }

    private static String block(String kind, byte[] bytes) {
        return "-----BEGIN " + kind + "-----\n"
                + Base64.getMimeEncoder(64, new byte[] {'\n'}).encodeToString(bytes) + "\n-----END " + kind + "-----\n";
    }

    @Test
    void aGivenOneIsReadFromPemInOneFileOrTwo() throws Exception {
        Path both = Files.writeString(folder.resolve("both.pem"), "a remark\n" + pem());
        assertThat(leaf(Certificate.given(List.of(both), ""))).isEqualTo(leaf(made));
        String[] parts = pem().split("(?=-----BEGIN PRIVATE)");
        Path chain = Files.writeString(folder.resolve("chain.pem"), parts[0]);
        Path key = Files.writeString(folder.resolve("key.pem"), parts[1]);
        assertThat(leaf(Certificate.given(List.of(key, chain), ""))).isEqualTo(leaf(made));
        assertThatThrownBy(() -> Certificate.given(List.of(chain), ""))
                .hasMessageContaining("there is no private key")
                .hasMessageContaining("another --certificate");
        assertThatThrownBy(() -> Certificate.given(List.of(key), "")).hasMessageContaining("there is no certificate");
    }

    @Test
    void aGivenOneIsReadFromPkcs12WithItsPassword() throws Exception {
        Path file = folder.resolve(Certificate.FILE);
        Certificate given = Certificate.given(List.of(file), made.password());
        assertThat(leaf(given)).isEqualTo(leaf(made));
        assertThat(given.homeMade()).isFalse();
        assertThatThrownBy(() -> Certificate.given(List.of(file), "wrong"))
                .isInstanceOf(Failure.BadInput.class)
                .hasMessageContaining("BOARDSIDE_CERTIFICATE_PASSWORD");
    }

    @Test
    void whatIsNoCertificateIsToldSo() throws Exception {
        Path text = Files.writeString(folder.resolve("text"), "hello");
        assertThatThrownBy(() -> Certificate.given(List.of(text), "")).isInstanceOf(Failure.BadInput.class);
        assertThatThrownBy(() -> Certificate.given(List.of(folder.resolve("absent")), ""))
                .isInstanceOf(Failure.BadInput.class)
                .hasMessageContaining("absent");
        Path old = Files.writeString(folder.resolve("old.pem"), block("EC PRIVATE KEY", new byte[] {1}));
        assertThatThrownBy(() -> Certificate.given(List.of(old), ""))
                .hasMessageContaining("openssl pkcs8 -topk8 -nocrypt");
    }
}
