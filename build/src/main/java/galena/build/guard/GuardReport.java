package galena.build.guard;

import galena.engine.circuit.Circuit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What moves the figures of a build, largest first in every list.
 *
 * @param carrier Hz, as set
 * @param output the coil whose current is the output
 * @param strongest the number of its strongest harmonic, 2 to 5
 * @param depth static negative peak with the audio at its level, a fraction; empty without audio or where the oscillation is lost
 *     in the trough
 * @param trimmer the adjustment that re-trimming turns; empty when nothing moves the carrier
 * @param hertzPerPercent what one percent of its travel does, Hz
 * @param parts by part value
 * @param strays by pair of nets
 * @param leads by lead
 * @param couplings by pair of windings
 * @param tools by coil
 * @param probes by net
 * @param points the build's own test points with their probes
 * @param drift temperature, supply and compensation
 * @param advice in words, most useful first
 */
public record GuardReport(
        double carrier,
        String output,
        int strongest,
        Optional<Double> depth,
        String trimmer,
        double hertzPerPercent,
        List<Part> parts,
        List<Stray> strays,
        List<Lead> leads,
        List<Winding> couplings,
        List<Tool> tools,
        List<Probe> probes,
        List<Point> points,
        Drift drift,
        List<String> advice) {
    private static final double ALIKE = 0.05;

    public GuardReport {
        parts = List.copyOf(parts);
        strays = List.copyOf(strays);
        leads = List.copyOf(leads);
        couplings = List.copyOf(couplings);
        tools = List.copyOf(tools);
        probes = List.copyOf(probes);
        points = List.copyOf(points);
        advice = List.copyOf(advice);
    }

    /**
     * The strays without repetition: a picofarad from the tank's hot end does nearly the same to whichever quiet net. Of those that move
     * the carrier within a twentieth alike and share a net, the one to ground stands for all, else the first.
     */
    public List<Stray> distinctStrays() {
        List<Stray> kept = new ArrayList<>();
        for (Stray stray : strays) {
            int same = -1;
            for (int k = 0; k < kept.size() && same < 0; k++) if (alike(kept.get(k), stray)) same = k;
            if (same < 0) kept.add(stray);
            else if (stray.isToGround() && !kept.get(same).isToGround()) kept.set(same, stray);
        }
        return kept;
    }

    private static boolean alike(Stray a, Stray b) {
        boolean share = a.from().equals(b.from())
                || a.to().equals(b.to())
                || a.from().equals(b.to())
                || a.to().equals(b.from());
        double one = a.perPicofarad().carrier(), other = b.perPicofarad().carrier();
        return share && Math.abs(one - other) <= ALIKE * Math.abs(one);
    }

    /**
     * What a cause does to the figures beside the carrier.
     *
     * @param output dB of the output coil's carrier current
     * @param harmonics dB of that current's harmonics 2 to 5, each against the fundamental
     * @param depth change of the static negative peak, a fraction; empty where that has no value
     * @param supply A of supply current
     */
    public record Effect(double output, List<Double> harmonics, Optional<Double> depth, double supply) {
        public Effect {
            harmonics = List.copyOf(harmonics);
        }

        /** Of harmonic h, 2 to 5, dB. */
        public double harmonic(int h) {
            return harmonics.get(h - Figures.FIRST_HARMONIC);
        }
    }

    /**
     * What a cause does, at fixed trim and after the carrier has been trimmed back.
     *
     * @param carrier Hz, at fixed trim
     * @param fixed the rest at fixed trim
     * @param retrimmed the rest with the carrier back where it was
     */
    public record Moves(double carrier, Effect fixed, Effect retrimmed) {}

    /** A part's value by one percent. @param value which value: "Lt inductance" */
    public record Part(String value, Moves perPercent) {}

    /** One picofarad across two nets. */
    public record Stray(String from, String to, Moves perPicofarad) {
        boolean isToGround() {
            return to.equals(Circuit.GROUND) || from.equals(Circuit.GROUND);
        }
    }

    /**
     * Ten nanohenries in a lead, about a centimetre of wire.
     *
     * @param part whose lead
     * @param net that it leads to; of a part with two leads, either
     */
    public record Lead(String part, String net, Moves perTenNanohenries) {}

    /** k = 0.001 between two windings, like ends alike; the other sign moves the other way. */
    public record Winding(String first, String second, Moves moves) {}

    /** A coil whose inductance falls by one percent and whose Q falls by a tenth, as with a metal tool near it. */
    public record Tool(String coil, Moves moves) {}

    /**
     * A probe at a net, solved in full.
     *
     * @param net touched
     * @param tenToOne Hz by 12 pF and 10 MΩ; empty when it stops the oscillation
     * @param oneToOne Hz by 100 pF and 1 MΩ; empty when it stops the oscillation
     * @param hand Hz by a hand at 10 cm, taken as 0.1 pF
     */
    public record Probe(String net, Optional<Double> tenToOne, Optional<Double> oneToOne, double hand) {}

    /**
     * A test point of the build with the probe that it names, solved in full.
     *
     * @param name of the point
     * @param at net
     * @param probe its name
     * @param hertz by which it moves the carrier; empty when it stops the oscillation
     */
    public record Point(String name, String at, String probe, Optional<Double> hertz) {}

    /**
     * Slow causes.
     *
     * @param perTenKelvin 10 °C more, everything together
     * @param byPart each part's share of the carrier's move, Hz for 10 °C
     * @param perVolt one volt more of supply: the carrier's move is the supply's pushing
     * @param compensation what would null the temperature's part, in words; empty when nothing simple would
     */
    public record Drift(Moves perTenKelvin, List<Share> byPart, Moves perVolt, String compensation) {
        public Drift {
            byPart = List.copyOf(byPart);
        }
    }

    /** A part and what its temperature does, Hz for 10 °C. */
    public record Share(String part, double hertz) {}
}
