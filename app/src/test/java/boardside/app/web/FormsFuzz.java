package boardside.app.web;

import boardside.app.fuzz.Fuzzed;
import boardside.app.practice.Failure;
import boardside.app.practice.Setup;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import io.javalin.http.Context;
import java.lang.reflect.InvocationHandler;
import java.lang.reflect.Proxy;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Fields of forms and of addresses, a line {@code name=value} each: read, or a fault beside the field. */
public final class FormsFuzz {
    private static final Texts TEXTS = Texts.in("en");

    private FormsFuzz() {}

    /** One input. */
    public static void fuzzerTestOneInput(byte[] data) {
        Map<String, List<String>> sent = new LinkedHashMap<>();
        Fuzzed.text(data).lines().forEach(line -> {
            int end = Math.max(0, line.indexOf('='));
            sent.computeIfAbsent(line.substring(0, end), name -> new ArrayList<>())
                    .add(line.substring(end + 1 > line.length() ? end : end + 1));
        });
        Context ctx = sending(sent);
        Fields fields = Fields.sent(ctx, TEXTS);
        sent.keySet().forEach(name -> {
            fields.whole(name, 0, 999);
            fields.number(name, 0, 99.5);
            fields.word(name, Face.class, Face.SLOW);
        });
        for (Drill drill : Drill.values()) {
            try {
                StartForm form = new StartForm(TEXTS, ctx, drill, Setup.plain());
                form.opponent();
                form.setup();
            } catch (Failure | IllegalArgumentException refused) {
                Fuzzed.refused(refused, Fuzzed.text(data));
            }
        }
        sent.values().forEach(values -> {
            try {
                Hosting hosting = Hosting.of(values, true, false);
                Fuzzed.same(
                        hosting,
                        Hosting.of(
                                hosting.addresses().stream()
                                        .map(Object::toString)
                                        .toList(),
                                true,
                                false));
                hosting.hosts();
            } catch (Failure refused) {
                Fuzzed.refused(refused, Fuzzed.text(data));
            }
            values.forEach(Network::hostOf);
        });
    }

    /** A request with such fields; nothing else is asked of it. */
    private static Context sending(Map<String, List<String>> sent) {
        InvocationHandler asked = (proxy, method, args) -> switch (method.getName()) {
            case "formParam", "queryParam" ->
                values(sent, args).stream().findFirst().orElse(null);
            case "formParams", "queryParams" -> values(sent, args);
            case "formParamMap", "queryParamMap" -> sent;
            default -> throw new UnsupportedOperationException(method.getName());
        };
        return (Context) Proxy.newProxyInstance(Context.class.getClassLoader(), new Class<?>[] {Context.class}, asked);
    }

    private static List<String> values(Map<String, List<String>> sent, Object[] name) {
        return sent.getOrDefault(String.valueOf(name[0]), List.of());
    }
}
