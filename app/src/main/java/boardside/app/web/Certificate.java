package boardside.app.web;

import boardside.app.practice.Failure;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.GeneralSecurityException;
import java.security.Key;
import java.security.KeyFactory;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.cert.CertificateFactory;
import java.security.cert.X509Certificate;
import java.security.spec.PKCS8EncodedKeySpec;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The certificate and private key for HTTPS: made here on first use, or given.
 *
 * @param keys holds one private key with its chain
 * @param password of that key
 * @param homeMade whether it was made here, so that no browser knows it yet
 */
public record Certificate(KeyStore keys, String password, boolean homeMade) {
    /** Name of the file kept in the data folder. */
    static final String FILE = "boardside-tls.p12";

    /** The longest life iOS and macOS accept in a certificate that a user chose to trust (Apple, HT210176). */
    private static final int DAYS = 825;

    /** It is made anew when less than this is left. */
    private static final Duration SPARE = Duration.ofDays(30);

    // PKCS12 wants a password. The file's mode keeps others out; a secret kept beside the file would add nothing.
    private static final String PASSWORD = "boardside";
    private static final Pattern PEM = Pattern.compile("-----BEGIN ([A-Z0-9 ]+)-----([^-]*)-----END \\1-----");

    /**
     * The certificate made here, in a folder that only this user reads; made first where there is none, it is about to
     * expire, or this machine has a name or address that it does not cover.
     */
    public static Certificate homeMade(Path folder, Network network, Instant now) {
        Path file = folder.resolve(FILE);
        try {
            KeyStore kept = Files.exists(file) ? read(file, PASSWORD) : null;
            if (kept == null || !fits(kept, network, now)) {
                make(file, network);
                kept = read(file, PASSWORD);
            }
            return new Certificate(kept, PASSWORD, true);
        } catch (IOException | GeneralSecurityException e) {
            throw new Failure.BadInput("the certificate " + file + " cannot be made or read (" + e.getMessage()
                    + "): delete that file and try again, or give a certificate with --certificate");
        }
    }

    private static boolean fits(KeyStore keys, Network network, Instant now) throws GeneralSecurityException {
        X509Certificate certificate = (X509Certificate) keys.getCertificate(alias(keys));
        Set<String> covered = new LinkedHashSet<>();
        Collection<List<?>> names = certificate.getSubjectAlternativeNames();
        for (List<?> name : names == null ? List.<List<?>>of() : names) {
            covered.add(String.valueOf(name.get(1)));
        }
        return covered.containsAll(names(network))
                && certificate.getNotAfter().toInstant().isAfter(now.plus(SPARE))
                && !certificate.getNotBefore().toInstant().isAfter(now);
    }

    private static List<String> names(Network network) {
        List<String> names = new ArrayList<>(List.of("localhost", "127.0.0.1", "0:0:0:0:0:0:0:1"));
        names.addAll(network.names());
        network.addresses().stream().map(Certificate::text).forEach(names::add);
        return names;
    }

    private static String text(InetAddress address) {
        return address.getHostAddress().replaceFirst("%.*", "");
    }

    /** By the keytool of the running Java, the one way to sign a certificate that every Java brings along. */
    private static void make(Path file, Network network) throws IOException {
        Path folder = Files.createTempDirectory(
                Files.createDirectories(file.toAbsolutePath().getParent()), ".tls");
        try {
            Path made = folder.resolve(FILE);
            String names = String.join(
                    ",",
                    names(network).stream()
                            .map(name -> (name.matches("[0-9.]+|.*:.*") ? "ip:" : "dns:") + name)
                            .toList());
            Process process = new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "keytool")
                                    .toString(),
                            "-genkeypair",
                            "-keystore",
                            made.toString(),
                            "-storetype",
                            "PKCS12",
                            "-storepass",
                            PASSWORD,
                            "-alias",
                            "boardside",
                            "-keyalg",
                            "EC",
                            "-groupname",
                            "secp256r1",
                            "-validity",
                            String.valueOf(DAYS),
                            "-dname",
                            "CN=Boardside",
                            "-ext",
                            "SAN=" + names,
                            "-ext",
                            "EKU=serverAuth")
                    .redirectErrorStream(true)
                    .start();
            String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            if (!process.waitFor(1, TimeUnit.MINUTES) || process.exitValue() != 0) {
                throw new IOException("keytool: " + said.strip());
            }
            made.toFile().setReadable(false, false);
            made.toFile().setReadable(true, true);
            Files.move(made, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted", e);
        } finally {
            Files.deleteIfExists(folder.resolve(FILE));
            Files.deleteIfExists(folder);
        }
    }

    /**
     * A certificate from elsewhere.
     *
     * @param files one PKCS12 file, or PEM files that together hold the chain (the server's own first) and its key
     * @param password of a PKCS12 file, may be empty
     * @throws Failure.BadInput saying what is missing or cannot be read
     */
    public static Certificate given(List<Path> files, String password) {
        try {
            StringBuilder pem = new StringBuilder();
            for (Path file : files) {
                String text = Files.readString(file, StandardCharsets.ISO_8859_1);
                if (text.contains("-----BEGIN ")) {
                    pem.append(text).append('\n');
                } else if (files.size() == 1) {
                    return new Certificate(read(file, password), password, false);
                } else {
                    throw new Failure.BadInput("--certificate: " + file + " is no PEM file; give PEM files together, or"
                            + " one PKCS12 file alone");
                }
            }
            return new Certificate(fromPem(pem.toString()), PASSWORD, false);
        } catch (IOException | GeneralSecurityException e) {
            throw new Failure.BadInput("--certificate: " + files.get(0) + " cannot be read (" + e.getMessage()
                    + "). It takes PKCS12, its password in BOARDSIDE_CERTIFICATE_PASSWORD, or PEM");
        }
    }

    private static KeyStore fromPem(String text) throws IOException, GeneralSecurityException {
        List<X509Certificate> chain = new ArrayList<>();
        PrivateKey key = null;
        for (Matcher block = PEM.matcher(text); block.find(); ) {
            byte[] bytes = Base64.getMimeDecoder().decode(block.group(2));
            String kind = block.group(1);
            if (kind.equals("CERTIFICATE")) {
                chain.add((X509Certificate)
                        CertificateFactory.getInstance("X.509").generateCertificate(new ByteArrayInputStream(bytes)));
            } else if (kind.equals("PRIVATE KEY")) {
                key = key(bytes);
            } else if (kind.endsWith("PRIVATE KEY")) {
                throw new Failure.BadInput("--certificate: a key of the kind \"" + kind + "\" is not read here; turn it"
                        + " into PKCS8 with: openssl pkcs8 -topk8 -nocrypt -in KEY -out NEWKEY");
            }
        }
        if (chain.isEmpty() || key == null) {
            throw new Failure.BadInput("--certificate: there is no " + (chain.isEmpty() ? "certificate" : "private key")
                    + " in what was given; name the file that holds it, too, with another --certificate");
        }
        if (!chain.get(0).getPublicKey().getAlgorithm().equals(key.getAlgorithm())) {
            throw new Failure.BadInput("--certificate: the private key does not belong to the first certificate");
        }
        KeyStore keys = KeyStore.getInstance("PKCS12");
        keys.load(null, null);
        keys.setKeyEntry("given", key, PASSWORD.toCharArray(), chain.toArray(X509Certificate[]::new));
        return keys;
    }

    private static PrivateKey key(byte[] bytes) throws GeneralSecurityException {
        GeneralSecurityException last = null;
        for (String algorithm : List.of("EC", "RSA", "EdDSA")) {
            try {
                return KeyFactory.getInstance(algorithm).generatePrivate(new PKCS8EncodedKeySpec(bytes));
            } catch (GeneralSecurityException e) {
                last = e;
            }
        }
        throw new GeneralSecurityException("the private key is neither RSA nor of an elliptic curve", last);
    }

    private static KeyStore read(Path file, String password) throws IOException, GeneralSecurityException {
        KeyStore keys = KeyStore.getInstance("PKCS12");
        try (InputStream in = Files.newInputStream(file)) {
            keys.load(in, password.toCharArray());
        }
        Key key = keys.getKey(alias(keys), password.toCharArray());
        if (!(key instanceof PrivateKey)) {
            throw new GeneralSecurityException("it holds no private key");
        }
        return keys;
    }

    private static String alias(KeyStore keys) throws GeneralSecurityException {
        for (String alias : Collections.list(keys.aliases())) {
            if (keys.isKeyEntry(alias)) {
                return alias;
            }
        }
        throw new GeneralSecurityException("it holds no private key");
    }
}
