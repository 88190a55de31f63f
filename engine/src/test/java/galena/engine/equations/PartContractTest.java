package galena.engine.equations;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.sun.management.ThreadMXBean;
import galena.engine.circuit.Circuit;
import galena.engine.part.Part;
import galena.engine.part.Polarity;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What every part promises: currents and charges that sum to zero, derivatives that are those of the values, no allocation. */
class PartContractTest {
    private static final long SEED = 20261125;
    private static final int STATES = 60;

    /** Step of the central differences, V or A. */
    private static final double STEP = 1e-6;

    /** Truncation of a central difference of the steepest exponential, (STEP/V_T)²/6, with room for rounding. */
    private static final double DIFFERENCE = 1e-6;

    /** Sums of terms that cancel are zero to this share of the largest term. */
    private static final double ROUNDING = 1e-14;

    static Stream<Specimen> specimens() {
        return Specimen.all();
    }

    /** Half the states within a volt, where devices conduct sensibly; half within thirty, where iterates may stray. */
    private static double[] state(Random random, Equations equations, int number) {
        double[] x = new double[equations.stride()];
        double span = number % 2 == 0 ? 1 : 30;
        for (int k = 1; k < x.length; k++) {
            x[k] = (2 * random.nextDouble() - 1) * (equations.isCurrent(k) ? 0.1 : span);
        }
        return x;
    }

    @Test
    void every_kind_of_part_is_examined() {
        Set<Class<?>> examined = new HashSet<>();
        specimens().forEach(s -> s.parts()
                .apply(new String[] {"a", "b", "c", "d", "e"})
                .forEach(p -> examined.add(p.getClass())));
        assertThat(examined).containsExactlyInAnyOrder(Part.class.getPermittedSubclasses());
    }

    @ParameterizedTest
    @MethodSource("specimens")
    void currents_and_charges_sum_to_zero(Specimen specimen) {
        Random random = new Random(SEED);
        Equations equations = specimen.equations(25);
        Evaluation e = equations.newEvaluation();
        for (int n = 0; n < STATES; n++) {
            double[] x = state(random, equations, n);
            equations.evaluate(x, 0, e);
            assertThat(sumOverNets(equations, e.i, e.g, x))
                    .as("currents, seed %d, state %d", SEED, n)
                    .isLessThan(ROUNDING);
            assertThat(sumOverNets(equations, e.q, e.c, x))
                    .as("charges, seed %d, state %d", SEED, n)
                    .isLessThan(ROUNDING);
        }
    }

    /** |sum| over the largest of the terms that were added up: each row's value, and slope times voltage. */
    private static double sumOverNets(Equations equations, double[] rows, double[] slopes, double[] x) {
        double sum = 0, largest = Double.MIN_NORMAL;
        for (int row = 1; row <= equations.size(); row++) {
            if (equations.isCurrent(row)) continue;
            sum += rows[row];
            largest = Math.max(largest, Math.abs(rows[row]));
        }
        for (int e = 1; e < slopes.length; e++) {
            int column = equations.pattern().column(e);
            if (!equations.isCurrent(equations.pattern().row(e)))
                largest = Math.max(largest, Math.abs(slopes[e] * x[column]));
        }
        return Math.abs(sum) / largest;
    }

    /** A grounded pin takes the current that it takes at zero volts on a net of its own. */
    @ParameterizedTest
    @MethodSource("specimens")
    void ground_is_a_net_like_any_other(Specimen specimen) {
        Random random = new Random(SEED);
        Equations free = specimen.equations(25);
        Evaluation a = free.newEvaluation();
        for (int pin = 0; pin < specimen.pins(); pin++) {
            String[] nets = {"p0", "p1", "p2", "p3", "p4"};
            nets[pin] = Circuit.GROUND;
            Equations grounded = specimen.on(25, nets);
            Evaluation b = grounded.newEvaluation();
            for (int n = 0; n < STATES; n++) {
                double[] x = state(random, free, n);
                x[free.net("p" + pin)] = 0;
                double[] y = new double[grounded.stride()];
                for (int k = 1; k < y.length; k++) y[k] = x[unknown(free, grounded.name(k))];
                free.evaluate(x, 0, a);
                grounded.evaluate(y, 0, b);
                for (int k = 1; k < y.length; k++) {
                    int like = unknown(free, grounded.name(k));
                    assertThat(b.i[k]).as("current, row %s", grounded.name(k)).isEqualTo(a.i[like]);
                    assertThat(b.q[k]).as("charge, row %s", grounded.name(k)).isEqualTo(a.q[like]);
                }
            }
        }
    }

    private static int unknown(Equations equations, String name) {
        for (int k = 1; k <= equations.size(); k++) if (equations.name(k).equals(name)) return k;
        throw new AssertionError("no unknown " + name);
    }

    @ParameterizedTest
    @MethodSource("specimens")
    void derivatives_are_those_of_the_values(Specimen specimen) {
        Random random = new Random(SEED);
        for (double celsius : new double[] {-10, 25, 50}) {
            Equations equations = specimen.equations(celsius);
            for (int n = 0; n < STATES; n++) compare(equations, state(random, equations, n), n);
        }
    }

    private static void compare(Equations equations, double[] x, int number) {
        Evaluation here = equations.newEvaluation(),
                below = equations.newEvaluation(),
                above = equations.newEvaluation();
        equations.evaluate(x, 0, here);
        double[][] g = dense(equations, here.g), c = dense(equations, here.c);
        for (int column = 1; column <= equations.size(); column++) {
            double[] moved = x.clone();
            moved[column] = x[column] - STEP;
            double from = moved[column];
            equations.evaluate(moved, 0, below);
            moved[column] = x[column] + STEP;
            double width = moved[column] - from;
            equations.evaluate(moved, 0, above);
            for (int row = 1; row <= equations.size(); row++) {
                String where =
                        equations.name(row) + " by " + equations.name(column) + ", seed " + SEED + ", state " + number;
                closeTo("G of " + where, g[row], column, (above.i[row] - below.i[row]) / width, here.i[row]);
                closeTo("C of " + where, c[row], column, (above.q[row] - below.q[row]) / width, here.q[row]);
            }
        }
    }

    private static void closeTo(String what, double[] row, int column, double difference, double value) {
        double largest = Arrays.stream(row).map(Math::abs).max().orElse(0);
        double allowed = DIFFERENCE * largest + 4 * Math.ulp(value) / STEP + 1e-24;
        assertThat(row[column]).as(what).isCloseTo(difference, within(allowed));
    }

    private static double[][] dense(Equations equations, double[] entries) {
        double[][] matrix = new double[equations.stride()][equations.stride()];
        for (int e = 1; e < entries.length; e++)
            matrix[equations.pattern().row(e)][equations.pattern().column(e)] += entries[e];
        return matrix;
    }

    @ParameterizedTest
    @MethodSource("specimens")
    void stays_finite_from_frost_to_a_hot_attic(Specimen specimen) {
        Random random = new Random(SEED);
        for (double celsius = -10; celsius <= 50; celsius += 10) {
            Equations equations = specimen.equations(celsius);
            Evaluation e = equations.newEvaluation();
            for (int n = 0; n < STATES; n++) {
                equations.evaluate(state(random, equations, 1), 0, e);
                for (double[] array : new double[][] {e.i, e.q, e.g, e.c}) {
                    for (double value : array)
                        assertThat(value).as("%s at %s °C", specimen, celsius).isFinite();
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("specimens")
    void one_evaluation_allocates_nothing(Specimen specimen) {
        Equations equations = specimen.equations(25);
        Evaluation e = equations.newEvaluation();
        double[] x = state(new Random(SEED), equations, 0);
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long self = Thread.currentThread().getId();
        long least = Long.MAX_VALUE;
        for (int round = 0; round < 5; round++) { // the first rounds may pay for class loading
            long before = threads.getThreadAllocatedBytes(self);
            for (int k = 0; k < 2000; k++) equations.evaluate(x, 0, e);
            least = Math.min(least, threads.getThreadAllocatedBytes(self) - before);
        }
        assertThat(least).as("bytes allocated by 2000 evaluations").isZero();
    }

    static Stream<Arguments> opposites() {
        return Stream.of(
                Arguments.of(Specimen.jfet(Polarity.N), Specimen.jfet(Polarity.P)),
                Arguments.of(Specimen.bipolar(Polarity.N), Specimen.bipolar(Polarity.P)),
                Arguments.of(Specimen.mosfet(Polarity.N), Specimen.mosfet(Polarity.P)),
                Arguments.of(Specimen.dual(Polarity.N), Specimen.dual(Polarity.P)));
    }

    @ParameterizedTest
    @MethodSource("opposites")
    void a_p_device_is_the_n_device_with_every_sign_reversed(Specimen n, Specimen p) {
        Random random = new Random(SEED);
        Equations forN = n.equations(40), forP = p.equations(40);
        Evaluation a = forN.newEvaluation(), b = forP.newEvaluation();
        for (int k = 0; k < STATES; k++) {
            double[] x = state(random, forN, k);
            forN.evaluate(x, 0, a);
            forP.evaluate(Arrays.stream(x).map(v -> -v).toArray(), 0, b);
            for (int row = 1; row <= forN.size(); row++) {
                assertThat(b.i[row]).isEqualTo(-a.i[row]);
                assertThat(b.q[row]).isEqualTo(-a.q[row]);
            }
            assertThat(b.g).containsExactly(a.g);
            assertThat(b.c).containsExactly(a.c);
        }
    }

    @Test
    void a_jfet_does_not_know_its_drain_from_its_source() {
        Random random = new Random(SEED);
        Equations straight = Specimen.jfet(Polarity.N).on(25, "one", "gate", "other");
        Equations swapped = Specimen.jfet(Polarity.N).on(25, "other", "gate", "one");
        Evaluation a = straight.newEvaluation(), b = swapped.newEvaluation();
        for (int k = 0; k < STATES; k++) {
            double[] x = state(random, straight, k);
            double[] y = {0, x[3], x[2], x[1]};
            straight.evaluate(x, 0, a);
            swapped.evaluate(y, 0, b);
            double[][] g = dense(straight, a.g), h = dense(swapped, b.g);
            for (int row = 1; row <= 3; row++) {
                double slack = 1e-12 * (Math.abs(a.i[row]) + 1e-12);
                assertThat(b.i[4 - row])
                        .as("current, seed %d, state %d", SEED, k)
                        .isCloseTo(a.i[row], within(slack));
                assertThat(b.q[4 - row]).isCloseTo(a.q[row], within(1e-12 * Math.abs(a.q[row])));
                for (int column = 1; column <= 3; column++) {
                    double largest = Arrays.stream(g[row]).map(Math::abs).max().orElse(0);
                    assertThat(h[4 - row][4 - column]).isCloseTo(g[row][column], within(1e-12 * largest));
                }
            }
        }
    }
}
