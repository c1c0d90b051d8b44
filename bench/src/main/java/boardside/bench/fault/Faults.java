package boardside.bench.fault;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Faults of machine, network and clock under a recording load, and what is left of the records. From the project's folder,
 * after {@code ./boardside --version} has built the program:
 *
 * <pre>mvn -q -B -ntp -pl bench -am -DskipTests package
 * java -cp bench/target/bench.jar boardside.bench.fault.Faults kills [500] [jdbc:postgresql URL of an empty database]
 * java -cp bench/target/bench.jar boardside.bench.fault.Faults network|offline|two-phones|clock|power [how many]
 * java -cp bench/target/bench.jar boardside.bench.fault.Faults full-disk|read-only FOLDER [how many]</pre>
 *
 * <p>{@code full-disk} wants a folder on a small file system of its own, {@code read-only} one on a file system that may be
 * mounted anew, both as the superuser (see docs/faults.md). {@code clock} wants faketime, {@code power} strace, each of the
 * Debian package of that name.
 * Each prints what was done and found, and ends with status 1 if anything acknowledged was lost or doubled.
 */
public final class Faults {
    private static final Duration PATIENCE = Duration.ofSeconds(5);

    private final Program program;
    private final long seed;
    private final Model model = new Model();
    private final List<Phone> phones = new ArrayList<>();

    /** What came of a trial: what was done, in words, and every difference between what must be there and what is. */
    record Result(String done, List<String> differences) {}

    Faults(Program program, long seed) {
        this.program = program;
        this.seed = seed;
    }

    /** Runs one kind of fault; see the class. */
    public static void main(String[] args) throws Exception {
        String kind = args[0];
        Path folder = Files.createTempDirectory("boardside-faults");
        boolean given = kind.equals("full-disk") || kind.equals("read-only");
        Path place = given ? Path.of(args[1]) : folder;
        int many = args.length > (given ? 2 : 1) ? Integer.parseInt(args[given ? 2 : 1]) : 0;
        String store = kind.equals("kills") && args.length > 2
                ? args[2]
                : place.resolve("faults.db").toString();
        Faults faults = new Faults(new Program(List.of("./boardside"), store, folder.resolve("log")), 1);
        Result result = switch (kind) {
            case "kills" -> faults.kills(many == 0 ? 500 : many);
            case "network" -> faults.network(many == 0 ? 5000 : many);
            case "offline" -> faults.offline(many == 0 ? 200 : many);
            case "two-phones" -> faults.twoPhones(many == 0 ? 2000 : many);
            case "clock" -> faults.clock(many == 0 ? 20 : many);
            case "power" -> faults.power(place, 1000, many == 0 ? 200 : many);
            case "full-disk" -> faults.fullDisk(place, many == 0 ? 20 : many);
            case "read-only" -> faults.readOnly(place, many == 0 ? 20 : many);
            default -> throw new IllegalArgumentException("no such fault: " + kind);
        };
        System.out.println(result.done());
        System.out.println(
                result.differences().isEmpty()
                        ? "nothing lost, nothing doubled"
                        : result.differences().size() + " differences, such as "
                                + result.differences().stream().limit(5).toList());
        if (!result.differences().isEmpty()) {
            System.out.println("left in " + folder);
            System.exit(1);
        }
        remove(folder);
    }

    private static void remove(Path folder) throws IOException {
        try (java.util.stream.Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }

    private Phone phone() {
        Phone phone = new Phone(phones.size(), model, PATIENCE, seed);
        phones.add(phone);
        return phone;
    }

    /** What the store says at the end against what must be there, and what it finds wrong with itself. */
    private Result result(String done) throws IOException, InterruptedException {
        List<String> differences = new ArrayList<>();
        Program.Ran export = program.run("export");
        if (export.status() != 0) {
            differences.add("export ended with " + export.status());
        } else {
            differences.addAll(model.differences(export.out()));
        }
        Program.Ran check = program.run("check");
        if (check.status() != 0) {
            differences.add("check: " + check.out().strip());
        }
        long stored = 0;
        long repeated = 0;
        for (Phone phone : phones) {
            phone.refused().forEach(refused -> differences.add("refused: " + refused));
            if (phone.waiting() > 0) {
                differences.add("never acknowledged: " + phone.waiting());
            }
            stored += phone.acknowledged();
            repeated += phone.repeated();
        }
        return new Result(
                String.format(
                        Locale.ROOT,
                        "%s; %,d rounds, %,d operations stored, %,d repeats recognised",
                        done,
                        model.size(),
                        stored,
                        repeated),
                differences);
    }

    /** Phones that record as fast as they can on threads of their own, until told to stop. */
    private final class Load implements AutoCloseable {
        private final ExecutorService threads = Executors.newCachedThreadPool();
        private final AtomicBoolean on = new AtomicBoolean(true);
        private final AtomicInteger port;
        private final List<Future<?>> running = new ArrayList<>();

        Load(int many, int firstPort) {
            port = new AtomicInteger(firstPort);
            for (int i = 0; i < many; i++) {
                Phone phone = phone();
                running.add(threads.submit(() -> record(phone)));
            }
        }

        private Void record(Phone phone) throws InterruptedException {
            phone.start();
            while (on.get()) {
                if (phone.rounds() >= 200) {
                    phone.start();
                }
                // A player does not stop because nothing goes out.
                if (phone.waiting() < 100) {
                    phone.tap();
                }
                if (!phone.send(port.get())) {
                    Thread.sleep(5);
                }
            }
            return null;
        }

        @Override
        public void close() throws IOException {
            on.set(false);
            threads.shutdown();
            try {
                for (Future<?> one : running) {
                    one.get();
                }
            } catch (java.util.concurrent.ExecutionException e) {
                throw new IllegalStateException(e);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
    }

    private void finish(int port) throws InterruptedException {
        for (Phone phone : phones) {
            phone.sendAll(port);
        }
    }

    private long acknowledged() {
        return phones.stream().mapToLong(Phone::acknowledged).sum();
    }

    /** SIGKILL at a random moment while three phones record, again and again. */
    Result kills(int times) throws IOException, InterruptedException {
        SplittableRandom random = new SplittableRandom(seed);
        int port = Program.freePort();
        try (Load load = new Load(3, port)) {
            for (int i = 0; i < times; i++) {
                Process process = program.serve(port, Map.of());
                long before = acknowledged();
                long until = System.nanoTime() + 20_000_000_000L;
                // Some kills before the first round, most in the middle of many.
                while (i % 10 != 0 && acknowledged() == before && System.nanoTime() < until) {
                    TimeUnit.MILLISECONDS.sleep(1);
                }
                TimeUnit.MICROSECONDS.sleep(random.nextInt(150_000));
                process.destroyForcibly().waitFor();
            }
        }
        return afterwards(port, times + " times killed");
    }

    private Result afterwards(int port, String done) throws IOException, InterruptedException {
        Process process = program.serve(port, Map.of());
        try {
            finish(port);
        } finally {
            process.destroy();
            process.waitFor();
        }
        return result(done);
    }

    /** A network that drops, cuts, stalls and repeats half of what three phones send. */
    Result network(int rounds) throws Exception {
        int port = Program.freePort();
        Process process = program.serve(port, Map.of());
        try (BadNetwork network = new BadNetwork(port, 2500, seed)) {
            ExecutorService threads = Executors.newCachedThreadPool();
            CountDownLatch done = new CountDownLatch(3);
            for (int i = 0; i < 3; i++) {
                Phone phone = new Phone(phones.size(), model, Duration.ofSeconds(2), seed);
                phones.add(phone);
                threads.execute(() -> {
                    try {
                        phone.start();
                        for (int tapped = 0; tapped < rounds / 3; tapped++) {
                            if (phone.rounds() >= 200) {
                                phone.start();
                            }
                            phone.tap();
                            phone.send(network.port());
                        }
                        phone.sendAll(network.port());
                    } catch (InterruptedException e) {
                        Thread.currentThread().interrupt();
                    } finally {
                        done.countDown();
                    }
                });
            }
            done.await();
            threads.shutdown();
            // What the network still holds back arrives late.
            Thread.sleep(3000);
            return resultOf(process, network.spoilt() + " requests spoilt");
        } finally {
            process.destroyForcibly().waitFor();
        }
    }

    private Result resultOf(Process process, String done) throws IOException, InterruptedException {
        process.destroy();
        process.waitFor();
        return result(done);
    }

    /** A phone that was away and comes back with its outbox full, while another one goes on. */
    Result offline(int rounds) throws IOException, InterruptedException {
        int port = Program.freePort();
        Process process = program.serve(port, Map.of());
        Phone away = phone();
        Phone here = phone();
        away.start();
        for (int i = 0; i < rounds; i++) {
            if (i % 20 == 19) {
                away.start();
            }
            away.tap();
        }
        here.start();
        for (int i = 0; i < rounds; i++) {
            here.tap();
            here.send(port);
        }
        int kept = away.waiting();
        long before = System.nanoTime();
        away.sendAll(port);
        long took = System.nanoTime() - before;
        here.sendAll(port);
        return resultOf(process, String.format(Locale.ROOT, "%d operations kept, sent in %.0f ms", kept, took / 1e6));
    }

    /** Two phones in one run, recording and correcting the same rounds at the same time. */
    Result twoPhones(int rounds) throws Exception {
        int port = Program.freePort();
        Process process = program.serve(port, Map.of());
        Phone one = phone();
        Phone other = phone();
        for (int run = 0; run * 100 < rounds; run++) {
            String id = one.start();
            if (!one.sendAll(port)) {
                break;
            }
            other.join(id);
            Thread beside = new Thread(() -> hundred(other, port));
            beside.start();
            hundred(one, port);
            beside.join();
        }
        return resultOf(process, "two phones in one run");
    }

    private static void hundred(Phone phone, int port) {
        try {
            for (int round = 1; round <= 100; round++) {
                phone.round(round);
                phone.send(port);
            }
            phone.sendAll(port);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** The server's clock jumps back and forth by months, from start to start. */
    Result clock(int jumps) throws IOException, InterruptedException {
        int port = Program.freePort();
        Phone phone = phone();
        phone.start();
        String[] offsets = {"+400d", "-400d", "+1d", "-1h", "+0d"};
        for (int i = 0; i < jumps; i++) {
            Process process = program.serve(
                    port,
                    Map.of(
                            "LD_PRELOAD", "/usr/lib/x86_64-linux-gnu/faketime/libfaketime.so.1",
                            "FAKETIME", offsets[i % offsets.length],
                            "DONT_FAKE_MONOTONIC", "1",
                            // Else every wait of Java's threads ends at once, and they do nothing but wait anew.
                            "FAKETIME_FORCE_MONOTONIC_FIX", "0"));
            for (int round = 0; round < 50; round++) {
                phone.tap();
                phone.send(port);
            }
            phone.sendAll(port);
            process.destroyForcibly().waitFor();
        }
        return afterwards(port, jumps + " jumps of the clock");
    }

    /**
     * What a phone recorded.
     *
     * @param states all of it up to each acknowledgement
     * @param acknowledged when each had come, in microseconds since 1970
     */
    private record Recorded(List<Model> states, List<Long> acknowledged) {
        /** What a store may hold at some time after the first: what was acknowledged, with or without the round under way. */
        List<Model> at(long micros) {
            int known = 0;
            while (known < states.size() && acknowledged.get(known) <= micros) {
                known++;
            }
            return states.subList(known - 1, Math.min(states.size(), known + 1));
        }
    }

    /**
     * The power goes at random moments while a phone records: what is on the disk then holds all that was acknowledged.
     *
     * @param folder where the store is, of which nothing is there yet
     * @param rounds that are recorded
     * @param cuts how many moments of that are looked at
     */
    Result power(Path folder, int rounds, int cuts) throws IOException, InterruptedException {
        Path store = Path.of(program.store());
        Path trace = folder.resolve("trace");
        Recorded recorded = recordTraced(PowerCut.traced(program.command(), folder, store, trace), rounds);
        PowerCut power = new PowerCut(folder, trace);
        int first = 0;
        while (power.micros(first) < recorded.acknowledged.get(0)) {
            first++;
        }
        List<Integer> copying = new ArrayList<>();
        for (int call = first; call < power.size(); call++) {
            if (power.touches(call, store)) {
                copying.add(call);
            }
        }
        SplittableRandom random = new SplittableRandom(seed);
        List<String> differences = new ArrayList<>();
        int control = 0;
        int controls = cuts / 10;
        for (int i = 0; i < cuts + controls; i++) {
            // Half of them while the log of what was written is copied into the store itself, which is a small part of
            // the time.
            int cut = i % 2 == 0 && !copying.isEmpty()
                    ? copying.get(random.nextInt(copying.size()))
                    : random.nextInt(first, power.size());
            Path left = folder.resolve("left");
            Files.createDirectory(left);
            power.leave(cut, i < cuts ? power.size() : first, left, random);
            String wrong = wrong(left.resolve(store.getFileName()), recorded.at(power.micros(cut)));
            remove(left);
            if (i < cuts && !wrong.isEmpty()) {
                differences.add("power cut in call " + cut + ": " + wrong);
            } else if (!wrong.isEmpty()) {
                control++;
            }
        }
        // Of fewer, all may have been written by chance.
        if (control == 0 && controls >= 5) {
            differences.add("a disk that forgets what was synced was not noticed");
        }
        return new Result(
                String.format(
                        Locale.ROOT,
                        "%,d rounds, %,d calls to the disk, the power cut in %d of them, %d times while copying into the store;"
                                + " where syncs did nothing %d of %d were not what was acknowledged",
                        rounds,
                        power.size(),
                        cuts,
                        copying.isEmpty() ? 0 : (cuts + 1) / 2,
                        control,
                        controls),
                differences);
    }

    /** One round after the other, each acknowledged, by a server that is traced and then killed. */
    private Recorded recordTraced(List<String> command, int rounds) throws IOException, InterruptedException {
        int port = Program.freePort();
        Process process = new Program(command, program.store(), program.log()).serve(port, Map.of());
        try {
            Phone phone = phone();
            phone.start();
            Recorded recorded = new Recorded(new ArrayList<>(), new ArrayList<>());
            for (int round = 0; round < rounds; round++) {
                phone.tap();
                recorded.states.add(model.copy());
                if (!phone.sendAll(port)) {
                    throw new IllegalStateException("the server does not answer; see " + program.log());
                }
                recorded.acknowledged.add(ChronoUnit.MICROS.between(Instant.EPOCH, Instant.now()));
            }
            return recorded;
        } finally {
            // The program, not what traces it, which then ends by itself.
            process.descendants().forEach(ProcessHandle::destroyForcibly);
            process.waitFor();
        }
    }

    /** What is wrong with a store that must hold one of some states; empty if nothing is. */
    private String wrong(Path store, List<Model> states) throws IOException, InterruptedException {
        Program left = new Program(program.command(), store.toString(), program.log());
        Program.Ran check = left.run("check");
        if (check.status() != 0) {
            return "check: " + check.out().strip();
        }
        Program.Ran export = left.run("export");
        if (export.status() != 0) {
            return "export ended with " + export.status();
        }
        List<String> closest = List.of();
        for (Model state : states) {
            closest = state.differences(export.out());
            if (closest.isEmpty()) {
                return "";
            }
        }
        return closest.toString();
    }

    /** The disk fills up under the load, what cannot be stored is answered so, and there is room again. */
    Result fullDisk(Path folder, int times) throws IOException, InterruptedException {
        int port = Program.freePort();
        Process process = program.serve(port, Map.of());
        Path ballast = folder.resolve("ballast");
        int said = 0;
        Phone phone = phone();
        phone.start();
        phone.sendAll(port);
        for (int i = 0; i < times; i++) {
            fill(ballast);
            boolean told = false;
            for (int round = 0; round < 200 && !told; round++) {
                phone.tap();
                told = !phone.send(port) && phone.lastStatus() == 503;
            }
            said += told ? 1 : 0;
            if (i % 2 == 0) {
                // Killed while the disk is full.
                process.destroyForcibly().waitFor();
            }
            Files.delete(ballast);
            if (i % 2 == 0) {
                process = program.serve(port, Map.of());
            }
            phone.sendAll(port);
        }
        return resultOf(process, times + " times full, " + said + " times answered with 503");
    }

    private static void fill(Path ballast) throws IOException {
        byte[] some = new byte[1 << 12];
        try (java.io.OutputStream out = Files.newOutputStream(ballast)) {
            while (true) {
                out.write(some);
            }
        } catch (IOException e) {
            // Full, which was wanted.
        }
    }

    /** The file system is read-only when the program comes back after a kill, and writable again later. */
    Result readOnly(Path mount, int times) throws IOException, InterruptedException {
        int port = Program.freePort();
        Phone phone = phone();
        phone.start();
        int said = 0;
        for (int i = 0; i < times; i++) {
            Process process = program.serve(port, Map.of());
            for (int round = 0; round < 20; round++) {
                phone.tap();
                phone.send(port);
            }
            process.destroyForcibly().waitFor();
            if (!mount("remount,ro", mount)) {
                throw new IOException(mount + " cannot be mounted read-only");
            }
            // It shows what is there, and takes nothing.
            process = program.serve(port, Map.of());
            phone.tap();
            said += !phone.send(port) && phone.lastStatus() == 503 ? 1 : 0;
            process.destroyForcibly().waitFor();
            mount("remount,rw", mount);
        }
        return afterwards(port, times + " times read-only, " + said + " times answered with 503");
    }

    private static boolean mount(String options, Path mount) throws IOException, InterruptedException {
        return new ProcessBuilder("mount", "-o", options, mount.toString())
                        .redirectErrorStream(true)
                        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                        .start()
                        .waitFor()
                == 0;
    }
}
