package galena.trade.limit;

import galena.trade.source.PrintedUnit;
import galena.trade.source.Provenance;
import java.util.Optional;
import java.util.OptionalDouble;

/** One limit of one region, with its source. */
public final class Rule {
    /** What a rule limits. */
    public enum Quantity {
        E_FIELD("V/m"),
        H_FIELD("A/m"),
        INPUT_POWER("W"),
        TOTAL_LENGTH("m"),
        ATTENUATION("dB"),
        /** Points to other rules of the region. */
        REFERENCE("");

        private final String unit;

        Quantity(String unit) {
            this.unit = unit;
        }

        /** SI unit of limits and findings; dB for attenuation. */
        public String unit() {
            return unit;
        }
    }

    /** Which emissions a rule is for. */
    public enum Scope {
        FUNDAMENTAL,
        UNWANTED,
        ANY,
        /** No carrier may lie here; unwanted emissions meet the rules referred to. */
        RESTRICTED,
        STANDBY
    }

    private final String id;
    private final String route;
    private final String section;
    private final Scope scope;
    private final String applies;
    private final double low;
    private final double high;
    private final Quantity quantity;
    private final Optional<LimitLaw> law;
    private final String printedUnit;
    private final Optional<LimitLaw> distance;
    private final String detector;
    private final String alternative;
    private final Provenance provenance;

    Rule(RuleTable.Draft draft) {
        this.id = draft.id();
        this.route = draft.route();
        this.section = draft.section();
        this.scope = draft.scope();
        this.applies = draft.applies();
        this.low = draft.low();
        this.high = draft.high();
        this.quantity = draft.quantity();
        this.law = draft.law();
        this.printedUnit = draft.unit();
        this.distance = draft.distance();
        this.detector = draft.detector();
        this.alternative = draft.alternative();
        this.provenance = draft.provenance();
    }

    public String id() {
        return id;
    }

    /** The way of meeting a region's rules that this one belongs to. */
    public String route() {
        return route;
    }

    /** Regulation and section. */
    public String section() {
        return section;
    }

    public Scope scope() {
        return scope;
    }

    /** "any", or the only kind of station it is for. */
    public String applies() {
        return applies;
    }

    public Quantity quantity() {
        return quantity;
    }

    /** Detector that the rule names, or empty. */
    public String detector() {
        return detector;
    }

    /** Route whose rules may be met instead, or empty. */
    public String alternative() {
        return alternative;
    }

    /** Source, date, basis, address, remark. */
    public Provenance provenance() {
        return provenance;
    }

    /** Whether the figure has been read rather than recalled. */
    public boolean isVerified() {
        return provenance.basis().isVerified();
    }

    /** Whether a frequency (Hz) lies in its band, both edges included: at an edge both neighbours bind. */
    public boolean covers(double frequency) {
        return frequency >= low && frequency <= high;
    }

    /** Lower edge of its band (Hz), 0 if open. */
    public double lowestFrequency() {
        return low;
    }

    /** Upper edge of its band (Hz), infinite if open. */
    public double highestFrequency() {
        return high;
    }

    /** The limit at a frequency (Hz), in the SI unit of its quantity; none for a reference. */
    public OptionalDouble limit(double frequency) {
        if (law.isEmpty()) return OptionalDouble.empty();
        double printed = law.get().at(frequency);
        if (printedUnit.equals("dB")) return OptionalDouble.of(printed);
        if (printedUnit.startsWith("dBµ")) return OptionalDouble.of(1e-6 * Math.pow(10, printed / 20));
        return OptionalDouble.of(PrintedUnit.of(printedUnit).toSi(printed));
    }

    /** Measuring distance (m) at a frequency (Hz), if the rule names one. */
    public OptionalDouble distance(double frequency) {
        return distance.isPresent() ? OptionalDouble.of(distance.get().at(frequency)) : OptionalDouble.empty();
    }

    @Override
    public String toString() {
        return id + " (" + section + ")";
    }
}
