package galena.engine;

import static org.assertj.core.api.Assertions.assertThat;

import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Battery;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Polarity;
import galena.engine.part.Resistor;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Waveforms;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The example of {@code docs/library.md}: the page shows what stands between the marks, and what it printed here. */
class LibraryExampleTest {
    private static final Path PAGE = Path.of("..", "docs", "library.md");
    private static final Path SOURCE = Path.of("src", "test", "java", "galena", "engine", "LibraryExampleTest.java");

    private static final String BEGIN = "// begin of the example";
    private static final String END = "// end of the example";

    // begin of the example
    static void example(PrintStream out) {
        // Saturation current 10 fA, beta 200 forward and 4 backward, Early voltage 80 V, transit times 0.4 and 50 ns,
        // then capacitance (F), built-in voltage (V) and grading of both junctions; no base resistance.
        Bipolar.Model transistor =
                new Bipolar.Model(1e-14, 200, 4, 80, 0.4e-9, 50e-9, 8e-12, 0.75, 0.35, 3e-12, 0.6, 0.33, 0);
        Circuit oscillator = Circuit.of(
                new Battery("B", "rail", "ground", 9, 2),
                new Resistor("R1", "rail", "base", 22e3),
                new Resistor("R2", "base", "ground", 10e3),
                new Capacitor("Cb", "base", "ground", 10e-9),
                Coil.ofQ("Lt", "rail", "collector", 22e-6, 60, 1e6),
                new Resistor("Rt", "rail", "collector", 4.7e3),
                new Capacitor("Cf", "collector", "emitter", 1.2e-9),
                new Capacitor("Ce", "emitter", "ground", 10e-9),
                new Resistor("Re", "emitter", "ground", 6.8e3),
                new Bipolar("Q1", Polarity.N, "collector", "base", "emitter", transistor));

        // Where it stands before anything oscillates. Not finding it is an answer, too: it names net and part.
        OperatingPoint rest = OperatingPointLadder.climb(Equations.of(oscillator));
        if (!(rest instanceof OperatingPoint.Found point)) throw new IllegalStateException(rest.toString());

        // Whether and how it starts.
        Startup startup = Startup.readiest(point).orElseThrow();
        out.printf(Locale.ROOT, "starts at %.0f kHz%n", startup.mode().frequency() / 1e3);

        // The steady oscillation itself, its frequency among the unknowns, with the error that was achieved.
        SteadyState state = new SteadyOscillation(Accuracy.CERTIFIED).solve(point, startup);
        if (!(state instanceof SteadyState.Found found)) throw new IllegalStateException(state.toString());
        Waveforms waves = found.waveforms();
        out.printf(
                "runs at %.1f kHz, %s%n",
                waves.frequency() / 1e3, found.floquet().stability());
        double fundamental = waves.currentAmplitude("Lt", 1);
        out.printf(Locale.ROOT, "current in Lt %.2f mA peak%n", 1e3 * fundamental);
        for (int harmonic = 2; harmonic <= 5; harmonic++) {
            double level = 20 * Math.log10(waves.currentAmplitude("Lt", harmonic) / fundamental);
            out.printf(Locale.ROOT, "harmonic %d %.1f dBc%n", harmonic, level);
        }
    }
    // end of the example

    private static String printed() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        example(new PrintStream(bytes, true, StandardCharsets.UTF_8));
        return bytes.toString(StandardCharsets.UTF_8).replace(System.lineSeparator(), "\n");
    }

    @Test
    void the_page_shows_this_example_and_what_it_prints() throws IOException {
        String page = Files.readString(PAGE);
        assertThat(page).contains("```java\n" + exampleText() + "```\n");
        assertThat(page).contains("```console\n" + printed() + "```\n");
    }

    private static String exampleText() throws IOException {
        List<String> lines = Files.readAllLines(SOURCE);
        int begin = lines.indexOf("    " + BEGIN), end = lines.indexOf("    " + END);
        return lines.subList(begin + 1, end).stream()
                .map(line -> line.startsWith("    ") ? line.substring(4) : line)
                .map(line -> line + "\n")
                .collect(Collectors.joining());
    }
}
