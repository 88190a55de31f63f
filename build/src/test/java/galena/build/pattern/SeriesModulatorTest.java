package galena.build.pattern;

import galena.build.folder.Build;
import galena.build.folder.Builds;
import galena.build.folder.Overlay;
import galena.build.source.BadInputException;
import galena.build.wiring.CircuitOf;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.startup.Linearised;
import galena.proof.Kind;
import galena.proof.Published;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The op-amp and the series transistor of the series-modulated pattern against the closed form of their loop. */
class SeriesModulatorTest {
    private static final double GAIN = 1e5;
    private static final double GAIN_BANDWIDTH = 3e6;
    private static final double DIVIDER = 11;
    private static final String LOOP =
            "closed loop of one pole: G = (1 + R5/R6)/(1 + (1 + R5/R6)/A(jf)), A of gain 1e5 and gain-bandwidth 3 MHz";

    /** The transistor in the loop follows by somewhat less than 1, and moves its base voltage with its current. */
    private static final double FOLLOWER = 0.02;

    /** The pattern's own parts of that name, with a resistor for the final and a source for the audio. */
    private static String modulator(double mod) throws BadInputException {
        String own = Pattern.named("series-modulated")
                .text()
                .lines()
                .filter(line -> List.of("U1:", "R5:", "R6:", "Q4:")
                        .contains(line.strip().split(" ")[0]))
                .collect(Collectors.joining("\n"));
        return String.format(
                Locale.ROOT,
                """
                galena: 1
                supply: {voltage: 12 V, resistance: 1 Ω}
                parts:
                %s
                  Vm: {voltage: %.6f V, plus: mod, minus: ground}
                  RL: {resistor: 3.3 kΩ, from: feed, to: ground}
                """,
                own,
                mod);
    }

    private static OperatingPoint.Found solved(double mod) throws BadInputException {
        Build build = Builds.read(modulator(mod));
        Circuit circuit = CircuitOf.build(build, Overlay.NONE).circuit();
        return (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(circuit));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.3, 0.45, 0.6, 0.8})
    void the_feed_stands_at_eleven_times_the_input(double mod) throws Exception {
        double step = 0.01;
        double slope = (solved(mod + step).voltage("feed") - solved(mod - step).voltage("feed")) / (2 * step);
        Published.source("build", Kind.CLOSED_FORM, LOOP)
                .matchesRelative(
                        "gain of the modulator at rest, " + mod + " V", DIVIDER / (1 + DIVIDER / GAIN), slope, 3e-5);
    }

    @ParameterizedTest
    @ValueSource(doubles = {100, 1e3, 4.5e3, 15e3, 50e3, 100e3})
    void the_feed_follows_the_audio_as_the_closed_loop_does(double frequency) throws Exception {
        OperatingPoint.Found point = solved(0.45);
        Equations equations = point.equations();
        double[][] x = Linearised.at(equations, point.x()).respond(frequency, equations.unitDeparture("Vm"));
        int feed = equations.net("feed");
        double re = x[0][feed], im = x[1][feed];
        double pole = DIVIDER * frequency / GAIN_BANDWIDTH;
        Published.source("build", Kind.CLOSED_FORM, LOOP)
                .matchesRelative(
                        "gain of the modulator at " + frequency + " Hz",
                        DIVIDER / Math.hypot(1 + DIVIDER / GAIN, pole),
                        Math.hypot(re, im),
                        3e-5 + FOLLOWER * pole * pole)
                .matches(
                        "lag of the modulator at " + frequency + " Hz (rad)",
                        Math.atan(pole),
                        Math.atan2(-im, re),
                        1e-5 + FOLLOWER * pole);
    }
}
