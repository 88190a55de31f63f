package galena.build.listen;

import galena.engine.circuit.Circuit;
import galena.engine.envelope.Response;
import galena.engine.envelope.Sidebands;
import galena.engine.equations.Equations;
import galena.engine.part.Capacitor;
import galena.engine.steady.SteadyState;
import java.util.ArrayList;
import java.util.List;

/**
 * How a carrier answers one slow input, small, split at the modulator: what the input does to the voltages that hold still for the
 * carrier, weighed by what each of them does to the carrier when it stays ("slow"), and the whole ("all"). Complex, per unit of the
 * input; amplitudes relative to the carrier's, frequencies in Hz.
 *
 * @param frequencies Hz, rising
 * @param slowAmplitude by frequency
 * @param slowFrequency by frequency
 * @param amplitude of all
 * @param frequency of all
 */
record SmallSignal(
        double[] frequencies,
        double[][] slowAmplitude,
        double[][] slowFrequency,
        double[][] amplitude,
        double[][] frequency) {

    /** What each held voltage, and the source itself, does to the carrier when it stays. */
    static final class Stays {
        private final List<Capacitor> capacitors = new ArrayList<>();
        private final List<double[]> by = new ArrayList<>();
        private final Carrier carrier;
        private final String coil;

        Stays(Carrier carrier, String coil) {
            this.carrier = carrier;
            this.coil = coil;
            Circuit full = carrier.full().waveforms().equations().circuit();
            for (String name : carrier.still()) {
                capacitors.add((Capacitor) full.part(name).orElseThrow());
                by.add(standing(carrier.held(), name, coil));
            }
        }

        /** The answer of the full circuit to one input. */
        SmallSignal to(String input, double unit, double[] frequencies) {
            Sidebands full = new Sidebands(carrier.full(), input);
            double[] own = standing(carrier.held(), input, coil);
            Equations equations = full.equations();
            int n = frequencies.length, branch = equations.current(coil).orElseThrow();
            double[][] sa = new double[n][2], sf = new double[n][2], a = new double[n][], f = new double[n][];
            for (int k = 0; k < n; k++) {
                Response at = full.at(frequencies[k]);
                Response.Modulation all = at.modulation(branch, 0, 1);
                a[k] = times(all.amplitude(), unit);
                f[k] = times(all.frequency(), unit);
                sa[k][0] = own[0] * unit;
                sf[k][0] = own[1] * unit;
                for (int c = 0; c < by.size(); c++) {
                    double[] v = at.mean(
                            equations.net(capacitors.get(c).from()),
                            equations.net(capacitors.get(c).to()));
                    for (int part = 0; part < 2; part++) {
                        sa[k][part] += by.get(c)[0] * unit * v[part];
                        sf[k][part] += by.get(c)[1] * unit * v[part];
                    }
                }
            }
            return new SmallSignal(frequencies, sa, sf, a, f);
        }
    }

    /** Relative amplitude and frequency (Hz) per unit of a source that stays. */
    static double[] standing(SteadyState.Found carrier, String source, String coil) {
        Sidebands sidebands = new Sidebands(carrier, source);
        int branch = sidebands.equations().current(coil).orElseThrow();
        Response.Modulation still = sidebands.at(0).modulation(branch, 0, 1);
        return new double[] {still.amplitude()[0], still.frequency()[0]};
    }

    private static double[] times(double[] z, double factor) {
        return new double[] {z[0] * factor, z[1] * factor};
    }
}
