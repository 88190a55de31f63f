package galena.build.guard;

import java.util.List;

/**
 * What moves the figures of a build, largest first in every list.
 *
 * @param carrier Hz, as set
 * @param trimmer the adjustment that re-trimming turns; empty when nothing moves the carrier
 * @param hertzPerPercent what one percent of its travel does, Hz
 * @param parts by part value
 * @param strays by pair of nets
 * @param leads by lead
 * @param couplings by pair of windings
 * @param tools by coil
 * @param probes by net
 * @param drift temperature, supply and compensation
 * @param advice in words, most useful first
 */
public record GuardReport(
        double carrier,
        String trimmer,
        double hertzPerPercent,
        List<Part> parts,
        List<Stray> strays,
        List<Lead> leads,
        List<Winding> couplings,
        List<Tool> tools,
        List<Probe> probes,
        Drift drift,
        List<String> advice) {
    public GuardReport {
        parts = List.copyOf(parts);
        strays = List.copyOf(strays);
        leads = List.copyOf(leads);
        couplings = List.copyOf(couplings);
        tools = List.copyOf(tools);
        probes = List.copyOf(probes);
        advice = List.copyOf(advice);
    }

    /**
     * What a figure does: at fixed trim, and after the carrier has been trimmed back.
     *
     * @param carrier Hz
     * @param output dB of the output coil's carrier current
     * @param outputRetrimmed the same after re-trimming
     * @param harmonic dB of its strongest harmonic against its fundamental
     * @param supply A of supply current
     */
    public record Moves(double carrier, double output, double outputRetrimmed, double harmonic, double supply) {}

    /** A part's value by one percent. @param value which value: "Lt inductance" */
    public record Part(String value, Moves perPercent) {}

    /** One picofarad across two nets. */
    public record Stray(String from, String to, Moves perPicofarad) {}

    /** Ten nanohenries in a lead, at the carrier. @param hertz Hz */
    public record Lead(String part, double hertz) {}

    /** k = 0.001 between two windings, like ends alike; the other sign moves the other way. */
    public record Winding(String first, String second, double hertz) {}

    /** A coil whose inductance falls by one percent and whose Q falls by a tenth, as a metal tool near it does. */
    public record Tool(String coil, double hertz) {}

    /**
     * A probe at a net, solved in full.
     *
     * @param net touched
     * @param tenToOne Hz by 12 pF and 10 MΩ
     * @param oneToOne Hz by 100 pF and 1 MΩ; zero when it stops the oscillation
     * @param stops whether the 1:1 probe stops the oscillation
     * @param hand Hz by a hand at 10 cm, taken as 0.1 pF
     */
    public record Probe(String net, double tenToOne, double oneToOne, boolean stops, double hand) {}

    /**
     * Slow causes.
     *
     * @param perTenKelvin Hz for 10 °C more
     * @param byPart each part's share of it, Hz for 10 °C
     * @param perVolt Hz for one volt more of supply
     * @param compensation what would null the temperature's part, in words; empty when nothing simple would
     */
    public record Drift(double perTenKelvin, List<Share> byPart, double perVolt, String compensation) {
        public Drift {
            byPart = List.copyOf(byPart);
        }
    }

    /** A part and what its temperature does, Hz for 10 °C. */
    public record Share(String part, double hertz) {}
}
