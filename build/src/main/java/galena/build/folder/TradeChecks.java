package galena.build.folder;

import galena.build.source.Nearest;
import galena.build.source.Node;
import galena.build.source.Node.Mapping;
import galena.build.source.Node.Scalar;
import galena.build.source.Problem;
import galena.build.source.Problems;
import galena.trade.battery.Battery;
import galena.trade.battery.BatteryLookup;
import galena.trade.device.BipolarData;
import galena.trade.device.Derived;
import galena.trade.device.Device;
import galena.trade.device.DeviceLibrary;
import galena.trade.device.DiodeData;
import galena.trade.device.DualGateMosfetData;
import galena.trade.device.Family;
import galena.trade.device.JfetData;
import galena.trade.device.Lookup;
import galena.trade.device.ModelAnswer;
import galena.trade.device.NotDerivable;
import galena.trade.device.TuningDiodeData;
import galena.trade.device.TuningDiodeModel;
import galena.trade.limit.Region;
import galena.trade.limit.RuleBook;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Checks of what a build names from the trade's data: devices by type number, batteries and regions by
 * name. */
final class TradeChecks {
    /** Volts: {@link galena.engine.part.Junction}'s own limits. */
    private static final double STEEPEST_POTENTIAL = 5;

    private static final double STEEPEST_GRADING = 2;

    private final DeviceLibrary library;
    private final Problems problems;

    private TradeChecks(DeviceLibrary library, Problems problems) {
        this.library = library;
        this.problems = problems;
    }

    static void check(Mapping top, DeviceLibrary library, Problems problems) {
        TradeChecks checks = new TradeChecks(library, problems);
        if (top.value("parts").orElse(null) instanceof Mapping parts)
            parts.entries().forEach(entry -> checks.part(entry.value()));
        top.find("supply.battery").ifPresent(checks::battery);
        top.find("intent.rules").ifPresent(checks::region);
    }

    /** The family that a kind of part may be named from; none for kinds that are no devices. */
    static List<Family> families(PartKind kind) {
        return switch (kind) {
            case DIODE -> List.of(Family.SILICON_DIODE, Family.SCHOTTKY_DIODE, Family.GERMANIUM_DIODE);
            case TUNING_DIODE -> List.of(Family.TUNING_DIODE);
            case NPN -> List.of(Family.NPN);
            case PNP -> List.of(Family.PNP);
            case JFET -> List.of(Family.N_JFET, Family.P_JFET);
            case DUAL_GATE_MOSFET -> List.of(Family.DUAL_GATE_N_MOSFET);
            default -> List.of();
        };
    }

    private void part(Node node) {
        if (!(node instanceof Mapping part)) return;
        for (PartKind kind : PartKind.values()) {
            boolean isDevice = !families(kind).isEmpty() || kind == PartKind.MOSFET || kind == PartKind.OPAMP;
            Optional<Node> value = part.value(kind.key());
            if (isDevice && value.isPresent() && value.get() instanceof Scalar scalar && !scalar.isEmpty())
                named(kind, scalar, part);
        }
    }

    private void named(PartKind kind, Scalar type, Mapping part) {
        Lookup answer = library.find(type.text());
        if (answer instanceof Lookup.Unknown unknown) {
            String known = library.devices().stream()
                    .filter(device -> families(kind).contains(device.family()))
                    .map(Device::type)
                    .collect(Collectors.joining(", "));
            String rule = known.isEmpty()
                    ? "No device of this kind is held: give its parameters, as {" + first(kind) + ": …}."
                    : "Held: " + known + ". Any other is given by its parameters in braces.";
            List<String> fitting = unknown.nearest().stream()
                    .filter(near -> known.contains(near))
                    .toList();
            String other = unknown.nearest().isEmpty() ? "" : unknown.nearest().get(0);
            Optional<String> remedy = nearest(fitting)
                    .or(() -> other.isEmpty() ? Optional.empty() : Optional.of("Nearest of another kind: " + other));
            add(type, "no device \"" + type.text() + "\" is held", rule, remedy);
        } else if (answer instanceof Lookup.Known known) {
            if (families(kind).contains(known.device().family())) fits(known.device(), type, part);
            else wrongKind(kind, known.device(), type);
        }
    }

    /** The parameter that an example begins with. */
    private static String first(PartKind kind) {
        return kind == PartKind.OPAMP ? "gain_bandwidth" : "threshold";
    }

    private void wrongKind(PartKind kind, Device device, Scalar type) {
        Optional<String> right = Arrays.stream(PartKind.values())
                .filter(other -> families(other).contains(device.family()))
                .map(other -> "Nearest: " + other.key() + ": " + device.type())
                .findFirst();
        String found = "\"" + type.text() + "\" is a " + device.family().word().replace('-', ' ');
        add(type, found, "This part is " + kind.noun() + ".", right);
    }

    private void fits(Device device, Scalar type, Mapping part) {
        if (typical(device) instanceof NotDerivable<?> missing)
            add(
                    type,
                    "\"" + device.type() + "\" can't be used: " + missing.reason(),
                    "A prediction needs its parameters.",
                    Optional.of("Give them in braces."));
        if (device instanceof TuningDiodeData diode && diode.typical() instanceof Derived<TuningDiodeModel> derived)
            steep(derived.model(), type);
        String channel = device.family() == Family.P_JFET ? "p" : "n";
        if (part.value("channel").orElse(null) instanceof Scalar written
                && !written.text().equals(channel))
            add(
                    written,
                    "\"" + device.type() + "\" has the channel " + channel,
                    "The library knows the channel.",
                    Optional.of("Delete channel."));
    }

    /** Steep types follow no junction law within the limits that the engine holds it to. */
    private void steep(TuningDiodeModel model, Scalar type) {
        if (model.potential() <= STEEPEST_POTENTIAL && model.grading() <= STEEPEST_GRADING) return;
        add(
                type,
                "\"" + model.type()
                        + "\" can't be used: its capacitance falls more steeply than the junction law allows",
                "The law holds up to a built-in potential of " + STEEPEST_POTENTIAL + " V and a grading of "
                        + STEEPEST_GRADING + ".",
                Optional.of(
                        "Give capacitance, built_in and grading in braces, fitted over the voltage you tune with."));
    }

    private static ModelAnswer<?> typical(Device device) {
        if (device instanceof JfetData jfet) return jfet.typical();
        if (device instanceof BipolarData bipolar) return bipolar.typical();
        if (device instanceof DualGateMosfetData mosfet) return mosfet.typical();
        if (device instanceof DiodeData diode) return diode.typical();
        return ((TuningDiodeData) device).typical();
    }

    private void battery(Node node) {
        if (!(node instanceof Scalar name) || name.isEmpty() || !BuildForm.BATTERY.fits(name.text())) return;
        if (Battery.named(name.text()) instanceof BatteryLookup.Unknown unknown)
            add(
                    name,
                    '"' + name.text() + "\": " + unknown.reason(),
                    "Held: " + String.join(", ", unknown.held()) + "; several in series as 6xAA-NiMH.",
                    nearest(unknown.held().stream()
                                    .filter(held -> held.startsWith(name.text()))
                                    .toList())
                            .or(() -> Optional.of("Any other supply is given as {voltage: 9 V, resistance: 2 Ω}.")));
    }

    private void region(Node node) {
        if (!(node instanceof Scalar name) || name.isEmpty()) return;
        RuleBook book = RuleBook.standard();
        if (book.region(name.text()).isPresent()) return;
        List<String> codes = book.regions().stream().map(Region::code).toList();
        add(
                name,
                "no region \"" + name.text() + "\" is held",
                "Held: " + String.join(", ", codes) + ".",
                Nearest.to(name.text(), codes).map(near -> "Nearest: " + near));
    }

    private static Optional<String> nearest(List<String> types) {
        return types.isEmpty() ? Optional.empty() : Optional.of("Nearest: " + String.join(", ", types));
    }

    private void add(Scalar at, String found, String rule, Optional<String> remedy) {
        problems.add(new Problem(at.place(), at.path(), found, rule, remedy));
    }
}
