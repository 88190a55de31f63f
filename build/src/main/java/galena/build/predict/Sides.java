package galena.build.predict;

import galena.engine.steady.SteadyState;
import java.util.Optional;

/**
 * Two specimens of a device, and the steady state with each in place of the typical one.
 *
 * @param what "Q1 (BF256B) by its transconductance"
 * @param weak empty when nothing runs with it
 * @param strong empty when nothing runs with it
 */
record Sides(String what, Optional<SteadyState.Found> weak, Optional<SteadyState.Found> strong) {}
