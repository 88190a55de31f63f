package galena.engine.steady;

import galena.engine.linear.Balanced;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.ejml.data.DMatrixRMaj;
import org.hipparchus.complex.Complex;

/**
 * How small disturbances of an orbit grow or die: the eigenvalues of the monodromy matrix on the consistent subspace, as
 * multipliers per period and as exponents per second. A free-running orbit has one trivial multiplier, a shift in time; it is
 * taken out by its vector, the known rate of change of the charges, and not by being near 1, where a large coupling capacitor or
 * a quartz resonator puts others. Each error bound is the difference to the same multiplier on the coarser
 * mesh, and the Newton step that the matrix is old.
 *
 * @param modes without the trivial one, the most growing first
 * @param trivial the trivial multiplier as found, 1 for an exact orbit and for driven circuits, which have none
 * @param frequency of the orbit, Hz
 */
public record Floquet(List<Mode> modes, double trivial, double frequency) {
    private static final double ROUNDING = 1e-13;
    /** Multipliers smaller than this die within a period or two and are of no further interest. */
    private static final double GONE = 1e-6;

    public Floquet {
        modes = List.copyOf(modes);
    }

    /**
     * One disturbance.
     *
     * @param re real part of the multiplier
     * @param im imaginary part
     * @param exponent growth in 1/s: f · ln |multiplier|
     * @param beat frequency of its beat against the carrier, Hz: f · |arg| / 2π
     * @param bound error bound of the exponent, 1/s
     */
    public record Mode(double re, double im, double exponent, double beat, double bound) {
        /** Magnitude of the multiplier. */
        public double size() {
            return Math.hypot(re, im);
        }
    }

    /** What the exponents say together. */
    public enum Stability {
        STABLE,
        UNSTABLE,
        /** Some exponent is zero to within its bound. */
        UNDECIDED
    }

    public Stability stability() {
        Stability verdict = Stability.STABLE;
        for (Mode mode : modes) {
            if (mode.exponent - mode.bound > 0) return Stability.UNSTABLE;
            if (mode.exponent + mode.bound > 0) verdict = Stability.UNDECIDED;
        }
        return verdict;
    }

    /** Where the orbit could not be linearised to working accuracy: one exponent of which nothing is known. */
    static Floquet undecided(double frequency) {
        return new Floquet(List.of(new Mode(1, 0, 0, 0, frequency)), 1, frequency);
    }

    /** Magnitude of the largest multiplier beside the trivial one; 0 when all are gone within a period. */
    public double largest() {
        return modes.stream().mapToDouble(Mode::size).max().orElse(0);
    }

    /**
     * A monodromy matrix and the direction of its trivial vector; the direction is empty for a driven circuit.
     *
     * @param scale of each charge, so that squares are energies: one over the root of its own capacitance or inductance
     * @param age the Newton step that the orbit still lacks, as a share of swing
     */
    record Monodromy(DMatrixRMaj matrix, double[] drift, double[] scale, double age) {
        /** Of one of a steady state's orbits, linearised where it stands. */
        static Monodromy of(SteadyState.Found found, Orbit orbit) {
            OrbitSystem system = new OrbitSystem(found.waveforms().equations(), found.site());
            double drive = found.waveforms().drive();
            system.setDrive(drive);
            double lacking =
                    new OrbitNewton(system).lacking(orbit, drive == 0 ? Closing.Free.FREQUENCY : Closing.Free.NOTHING);
            double[] shift = drive == 0 ? system.startDrift(orbit) : new double[0];
            return new Monodromy(system.closing().monodromy(), shift, system.energyScales(orbit), lacking);
        }
    }

    static Floquet of(Monodromy fine, Monodromy coarse, double frequency) {
        Split a = split(fine), b = split(coarse);
        List<Mode> modes = new ArrayList<>();
        for (Complex value : a.others) {
            double size = value.norm();
            if (size < GONE) continue;
            double nearest = b.others.stream()
                    .mapToDouble(other -> other.subtract(value).norm())
                    .min()
                    .orElse(1);
            double bound = frequency * Math.log1p((nearest + fine.age + ROUNDING) / size);
            double beat = frequency * Math.abs(value.getArgument()) / (2 * Math.PI);
            modes.add(new Mode(value.getReal(), value.getImaginary(), frequency * Math.log(size), beat, bound));
        }
        modes.sort(Comparator.comparingDouble(m -> -m.exponent()));
        return new Floquet(modes, a.trivial, frequency);
    }

    private record Split(double trivial, List<Complex> others) {}

    /**
     * The trivial multiplier and the rest. The drift is the trivial one's vector, known without any search: mirrored so that it lies
     * along the first axis, the matrix has the others in what is left without first row and column. A search by likeness fails
     * where a slow mode pulls the frequency: its vector, too, is almost all shift in time.
     */
    private static Split split(Monodromy monodromy) {
        int n = monodromy.matrix.numRows;
        if (monodromy.drift.length == 0)
            return new Split(1, List.of(Balanced.ofDependent(monodromy.matrix).values()));
        double[] mirror = new double[n];
        double square = 0;
        for (int k = 0; k < n; k++) {
            mirror[k] = monodromy.drift[k] * monodromy.scale[k];
            square += mirror[k] * mirror[k];
        }
        if (!(square > 0))
            return new Split(1, List.of(Balanced.ofDependent(monodromy.matrix).values()));
        mirror[0] += Math.copySign(Math.sqrt(square), mirror[0]);
        DMatrixRMaj turned = energyNorm(monodromy);
        double weight = 0;
        for (double u : mirror) weight += u * u;
        for (int c = 0; c < n; c++) {
            double dot = 0;
            for (int r = 0; r < n; r++) dot += mirror[r] * turned.get(r, c);
            for (int r = 0; r < n; r++) turned.add(r, c, -2 * dot / weight * mirror[r]);
        }
        for (int r = 0; r < n; r++) {
            double dot = 0;
            for (int c = 0; c < n; c++) dot += mirror[c] * turned.get(r, c);
            for (int c = 0; c < n; c++) turned.add(r, c, -2 * dot / weight * mirror[c]);
        }
        DMatrixRMaj rest = new DMatrixRMaj(n - 1, n - 1);
        for (int r = 1; r < n; r++) for (int c = 1; c < n; c++) rest.set(r - 1, c - 1, turned.get(r, c));
        return new Split(turned.get(0, 0), List.of(Balanced.ofDependent(rest).values()));
    }

    private static DMatrixRMaj energyNorm(Monodromy monodromy) {
        int n = monodromy.matrix.numRows;
        DMatrixRMaj scaled = new DMatrixRMaj(n, n);
        for (int r = 0; r < n; r++) {
            for (int c = 0; c < n; c++) {
                scaled.set(r, c, monodromy.matrix.get(r, c) * monodromy.scale[r] / monodromy.scale[c]);
            }
        }
        return scaled;
    }
}
