package galena.bench.capture;

import java.util.OptionalDouble;

/**
 * In-phase and quadrature samples of a receiver.
 *
 * @param interval time between pairs (s)
 * @param centre tuned frequency (Hz), if known
 * @param inPhase channel I
 * @param quadrature channel Q
 */
public record IqRecord(double interval, OptionalDouble centre, Channel inPhase, Channel quadrature)
        implements Content {}
