package boardside.app.web;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * HTTP by hand, so that a test may send what no well-behaved client would.
 *
 * @param status of the answer
 * @param headers by name in lower case; several of one name one below the other
 * @param body of the answer
 */
record Wire(int status, Map<String, String> headers, String body) {
    /** Where requests count as coming from the machine itself, in {@link #serverOfAHouse}. */
    static final String HERE = "127.0.0.1";

    /** Where they count as coming from elsewhere in the house. */
    static final String ELSEWHERE = "127.0.0.2";

    /** A server to which one loopback address is this machine and another is the house network. */
    static Server serverOfAHouse(boardside.app.record.Records records, java.time.Clock clock, ServerOptions options) {
        return Server.start(
                records, options, clock, house(), ctx -> HERE.equals(ctx.req().getLocalAddr()));
    }

    static Network house() {
        return new Network(List.of(new InetSocketAddress(ELSEWHERE, 0).getAddress()), List.of("porch", "porch.local"));
    }

    static Wire get(String address, int port, String path, String... headers) {
        return send(address, port, "GET", path, "", headers);
    }

    static Wire post(String address, int port, String path, String form, String... headers) {
        return send(address, port, "POST", path, form, headers);
    }

    /** One request on a connection of its own; Host is the address unless a header says otherwise. */
    static Wire send(String address, int port, String method, String path, String body, String... headers) {
        List<String> lines = new ArrayList<>(List.of(method + " " + path + " HTTP/1.1", "Connection: close"));
        lines.addAll(List.of(headers));
        if (lines.stream().noneMatch(line -> line.startsWith("Host:"))) {
            lines.add("Host: " + address + ":" + port);
        }
        if (method.equals("POST")) {
            lines.add("Content-Type: application/x-www-form-urlencoded");
            lines.add("Content-Length: " + body.getBytes(StandardCharsets.UTF_8).length);
        }
        String request = String.join("\r\n", lines) + "\r\n\r\n" + body;
        try (Socket socket = new Socket(InetAddress.getByName(address), port)) {
            socket.setSoTimeout(60_000);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.UTF_8));
            return read(socket.getInputStream());
        } catch (IOException e) {
            throw new AssertionError(method + " " + path + ": " + e, e);
        }
    }

    private static Wire read(InputStream in) throws IOException {
        String answer = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        int end = answer.indexOf("\r\n\r\n");
        String[] lines = answer.substring(0, end).split("\r\n");
        Map<String, String> headers = new TreeMap<>();
        for (int i = 1; i < lines.length; i++) {
            int colon = lines[i].indexOf(':');
            headers.merge(
                    lines[i].substring(0, colon).toLowerCase(Locale.ROOT),
                    lines[i].substring(colon + 1).strip(),
                    (one, other) -> one + "\n" + other);
        }
        return new Wire(Integer.parseInt(lines[0].split(" ")[1]), headers, answer.substring(end + 4));
    }

    String header(String name) {
        return headers.getOrDefault(name, "");
    }

    /** A cookie this answer sets, as "name=value", or empty. */
    String cookie(String name) {
        return header("set-cookie")
                .lines()
                .filter(line -> line.startsWith(name + "="))
                .map(line -> line.replaceFirst(";.*", ""))
                .findFirst()
                .orElse("");
    }

    /** The token in the page's first form. */
    String token() {
        return body.replaceFirst("(?s).*?name=\"token\" value=\"([0-9a-f]+)\".*", "$1");
    }
}
