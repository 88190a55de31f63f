package galena.engine.steady;

import galena.engine.linear.SingularMatrix;
import galena.engine.startup.Site;
import java.util.Locale;

/** What the search for a steady state came to. */
public sealed interface SteadyState {
    /** Why there is none, with the usual causes. */
    enum Reason {
        /** There is one. */
        NONE("found"),
        /** The oscillation needs help at every amplitude: too little gain or too much loss. */
        DECAYS("it decays at every amplitude: there is less gain than loss, however it is kicked"),
        /** Load can be carried at any amplitude tried: nothing in the circuit limits it. */
        NO_LIMIT("nothing limits the amplitude below ten times the supply: a limiting device is missing"),
        /** Not even the smallest amplitude could be held: the mode is not what it seemed. */
        NO_START("the small oscillation could not be followed from the operating point"),
        /** The march along amplitudes stuck. */
        MARCH_STUCK("the oscillation could be followed only up to an amplitude, where it changes too sharply"),
        /** The orbit changes with every refinement of the mesh. */
        MESH_TOO_COARSE("the waveform is too sharp for the finest mesh"),
        /** A known orbit did not survive the change. */
        LOST("the orbit was lost on the way; start from cold"),
        /** The driven response could not be followed to the sources' full amplitude. */
        DRIVE_STUCK("the response could be followed only up to a part of the drive");

        private final String words;

        Reason(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /**
     * A steady state.
     *
     * @param accuracy that was asked for and met
     * @param waveforms the period, on the finer of two meshes
     * @param error the difference between the two
     * @param site where the phase is pinned
     * @param iterations Newton iterations from the first mesh that follows the solution
     * @param lastStep the last Newton step, as a share of swing
     * @param inner what later solves start from
     */
    record Found(
            Accuracy accuracy,
            Waveforms waveforms,
            AchievedError error,
            Site site,
            int iterations,
            double lastStep,
            Inner inner)
            implements SteadyState {
        /** How small disturbances of the orbit grow or die; computed when asked, from a linearisation of both meshes' orbits. */
        public Floquet floquet() {
            try {
                return Floquet.of(
                        Floquet.Monodromy.of(this, waveforms.orbit()),
                        Floquet.Monodromy.of(this, inner.coarse),
                        waveforms.frequency());
            } catch (SingularMatrix | ArithmeticException cancelled) {
                return Floquet.undecided(waveforms.frequency());
            }
        }

        Orbit coarse() {
            return inner.coarse;
        }

        /** The same period on the coarser of the two meshes, from which the error was measured. */
        public Waveforms coarser() {
            return new Waveforms(waveforms.equations(), inner.coarse, waveforms.drive());
        }
    }

    /** What later questions start from: the coarser of the two orbits. Opaque. */
    final class Inner {
        private final Orbit coarse;

        Inner(Orbit coarse) {
            this.coarse = coarse;
        }
    }

    /**
     * No steady state.
     *
     * @param amplitude how far the march came, V at the site; 0 where there was none
     * @param load the load that held it there, S; below zero: the loss that would have to go
     */
    record NotFound(Reason reason, double amplitude, double load) implements SteadyState {
        @Override
        public String toString() {
            return reason + (amplitude > 0 ? String.format(Locale.ROOT, " (reached %.3g V)", amplitude) : "");
        }
    }
}
