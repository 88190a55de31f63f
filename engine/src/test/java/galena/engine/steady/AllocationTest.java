package galena.engine.steady;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import galena.engine.Circuits;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.startup.Startup;
import java.lang.management.ManagementFactory;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The loops over a mesh's intervals allocate nothing: a Newton step's bytes are those of the small closing system, the same on a
 * mesh of 48 intervals as on one of 192.
 */
class AllocationTest {
    private static final int STEPS = 6;

    static Stream<Circuit> oscillators() {
        return Stream.of(Circuits.groundedGateColpitts(), Circuits.gateLeakHartley(), Circuits.transmitter());
    }

    @ParameterizedTest
    @MethodSource("oscillators")
    void a_newton_step_allocates_only_its_closing_system(Circuit circuit) {
        var point = (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(circuit));
        Startup startup = Startup.readiest(point).orElseThrow();
        var found = (SteadyState.Found) new SteadyOscillation(Accuracy.LIVE).solve(point, startup);
        long few = bytesOfAStep(found, 48), many = bytesOfAStep(found, 192);
        int charges = found.waveforms().equations().chargedRows().length;
        assertThat(many).as("bytes on four times the intervals").isEqualTo(few);
        // some five matrices of charges and extra unknowns, their factors and vectors: 1136 bytes for 4 charges, 4848
        // for 12
        assertThat(few).isLessThan(8L * 10 * (charges + 4) * (charges + 4) + 4096);
    }

    private static long bytesOfAStep(SteadyState.Found found, int intervals) {
        Equations equations = found.waveforms().equations();
        OrbitSystem system = new OrbitSystem(equations, found.site());
        Orbit orbit = found.coarse().onMesh(Remesh.follow(found.coarse(), equations, intervals));
        system.plan(orbit);
        double[] step = new double[orbit.x.length], extra = new double[Closing.MOST_FREE];
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long self = Thread.currentThread().getId(), least = Long.MAX_VALUE;
        for (int k = 0; k < STEPS; k++) { // the first makes room
            long before = threads.getThreadAllocatedBytes(self);
            system.newtonStep(orbit, Closing.Free.FREQUENCY, 0, step, extra);
            least = Math.min(least, threads.getThreadAllocatedBytes(self) - before);
        }
        return least;
    }
}
