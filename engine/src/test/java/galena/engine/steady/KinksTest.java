package galena.engine.steady;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.engine.Circuits;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.startup.Startup;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Where a channel is cut off or pinches off, the mesh has a point, and the method its order. */
class KinksTest {
    private static SteadyState.Found colpitts() {
        OperatingPoint.Found point =
                (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(Circuits.groundedGateColpitts()));
        return (SteadyState.Found) new SteadyOscillation(Accuracy.CERTIFIED)
                .solve(point, Startup.readiest(point).orElseThrow());
    }

    @Test
    void mesh_points_lie_on_the_bends_of_the_channel() {
        SteadyState.Found found = colpitts();
        Orbit orbit = found.coarse();
        double[] kinks = Kinks.of(orbit, found.waveforms().equations());
        assertThat(kinks).hasSizeGreaterThanOrEqualTo(2).isSorted();
        double narrowest = 1;
        for (int k = 0; k < orbit.intervals(); k++) narrowest = Math.min(narrowest, orbit.width(k));
        for (double kink : kinks) {
            double nearest = Arrays.stream(orbit.mesh)
                    .map(point -> Math.abs(point - kink))
                    .min()
                    .orElseThrow();
            assertThat(nearest).isLessThan(1e-3 * narrowest);
        }
    }

    /** Radau's three stages are of order five: E. Hairer and G. Wanner, Solving Ordinary Differential Equations II, §IV.5. */
    @Test
    void the_frequency_converges_with_the_order_of_the_method() {
        SteadyState.Found found = colpitts();
        Orbit fine = found.waveforms().orbit();
        double[] coarse = new double[3];
        int[] intervals = {32, 48, 72};
        for (int k = 0; k < intervals.length; k++) coarse[k] = error(found, fine, intervals[k]);
        for (int k = 1; k < intervals.length; k++) {
            double order = Math.log(coarse[k - 1] / coarse[k]) / Math.log((double) intervals[k] / intervals[k - 1]);
            assertThat(order)
                    .as("from %d to %d", intervals[k - 1], intervals[k])
                    .isCloseTo(5, within(1.2));
        }
    }

    /** What halving the intervals changes, relative. */
    private static double error(SteadyState.Found found, Orbit start, int intervals) {
        Equations equations = found.waveforms().equations();
        OrbitNewton newton = new OrbitNewton(new OrbitSystem(equations, found.site()), OrbitNewton.Manner.to(1e-10));
        Orbit orbit = start.onMesh(Remesh.follow(start, equations, intervals));
        assertThat(newton.improve(orbit, Closing.Free.FREQUENCY, 0, 25)).isTrue();
        Orbit halved = orbit.onMesh(orbit.halvedMesh());
        assertThat(newton.improve(halved, Closing.Free.FREQUENCY, 0, 25)).isTrue();
        return Math.abs(orbit.frequency - halved.frequency) / halved.frequency;
    }
}
