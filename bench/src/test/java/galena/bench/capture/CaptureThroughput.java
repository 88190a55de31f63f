package galena.bench.capture;

import galena.signal.stream.SampleFormat;
import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;

/**
 * How fast captures are read on one core: no test, for its figures depend on the machine. Wanted: 150 MB/s for WAV, 60
 * MB/s for text. Beside them the bare reading of the same bytes. From the project folder after a build:
 *
 * <pre>mvn -q -pl bench exec:java -Dexec.classpathScope=test -Dexec.mainClass=galena.bench.capture.CaptureThroughput</pre>
 */
public final class CaptureThroughput {
    private static final int ROUNDS = 5;

    private CaptureThroughput() {}

    public static void main(String[] arguments) throws IOException {
        int megabytes = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 128;
        Path folder = Files.createTempDirectory("throughput");
        Path wav = folder.resolve("a.wav"), text = folder.resolve("a.csv"), floats = folder.resolve("f.wav");
        try {
            Files.write(wav, BinaryCapturesTest.wav(noise(megabytes << 19), SampleFormat.S16, 2, 2_400_000));
            Files.write(floats, BinaryCapturesTest.wav(noise(megabytes << 18), SampleFormat.F32, 2, 2_400_000));
            writeText(text, (long) megabytes << 20);
            for (Path file : new Path[] {wav, floats, text}) {
                report(file.getFileName() + ", bytes alone", file, CaptureThroughput::drain);
                report(
                        file.getFileName() + ", as a capture",
                        file,
                        f -> Captures.read(f, Overrides.none().withKeep(1 << 20)));
            }
            System.out.printf(
                    Locale.ROOT,
                    "heap in use afterwards: %d MB%n",
                    (Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory()) >> 20);
        } finally {
            for (Path file : new Path[] {wav, text, floats}) Files.deleteIfExists(file);
            Files.deleteIfExists(folder);
        }
    }

    private interface Reader {
        void read(Path file) throws IOException;
    }

    private static void report(String what, Path file, Reader reader) throws IOException {
        double[] speed = new double[ROUNDS];
        for (int k = 0; k < ROUNDS; k++) {
            long start = processor();
            reader.read(file);
            speed[k] = Files.size(file) / 1e6 / ((processor() - start) / 1e9);
        }
        Arrays.sort(speed);
        System.out.printf(
                Locale.ROOT,
                "%-24s best %6.0f, median %6.0f, worst %6.0f MB/s%n",
                what,
                speed[ROUNDS - 1],
                speed[ROUNDS / 2],
                speed[0]);
    }

    /** Processor time of this thread (ns): what one core takes, whatever else the machine does. */
    private static long processor() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private static void drain(Path file) throws IOException {
        byte[] buffer = new byte[1 << 18];
        try (InputStream in = new BufferedInputStream(Files.newInputStream(file), 1 << 18)) {
            while (in.read(buffer) > 0) {
                // nothing is done with them
            }
        }
    }

    private static double[] noise(int count) {
        double[] out = new double[count];
        for (int k = 0; k < count; k++) out[k] = 0.8 * Math.sin(0.37 * k + (k & 1));
        return out;
    }

    private static void writeText(Path file, long length) throws IOException {
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 20)) {
            out.write("Time (s),CH1 (V),CH2 (V)\n".getBytes(StandardCharsets.US_ASCII));
            for (long k = 0, written = 0; written < length; k++) {
                byte[] row = (Long.toString(k) + "e-8," + Math.rint(1000 * Math.sin(0.37 * k)) / 1000 + ",-0.0123\n")
                        .getBytes(StandardCharsets.US_ASCII);
                out.write(row);
                written += row.length;
            }
        }
    }
}
