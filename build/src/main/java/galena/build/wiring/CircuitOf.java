package galena.build.wiring;

import galena.build.folder.Build;
import galena.build.folder.Calibration;
import galena.build.folder.Coupled;
import galena.build.folder.Overlay;
import galena.build.folder.PartEntry;
import galena.build.folder.Stray;
import galena.build.folder.Supply;
import galena.build.folder.TestPoint;
import galena.build.source.BadInputException;
import galena.build.source.Problem;
import galena.engine.circuit.Circuit;
import galena.engine.circuit.Fault;
import galena.engine.circuit.Structure;
import galena.engine.part.Battery;
import galena.engine.part.Capacitor;
import galena.engine.part.Coupling;
import galena.engine.part.Load;
import galena.engine.part.Part;
import galena.trade.battery.BatteryLookup;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Makes the engine's circuit from a build and what is laid over it. */
public final class CircuitOf {
    private final Build build;
    private final Overlay overlay;
    private final Map<String, String> origins = new LinkedHashMap<>();
    private final List<Part> parts = new ArrayList<>();

    private CircuitOf(Build build, Overlay overlay) {
        this.build = build;
        this.overlay = overlay;
    }

    /**
     * @param build as read
     * @param overlay its names must be those of the build
     * @throws BadInputException if the circuit's structure has no solution, with every fault at its place in the file; or
     *     if the overlay names what the build doesn't have
     */
    public static Assembled build(Build build, Overlay overlay) throws BadInputException {
        OverlayChecks.check(build, overlay);
        CouplingChecks.check(build, overlay);
        AerialWire.check(build);
        Travel.check(build);
        return new CircuitOf(build, overlay).assemble();
    }

    private Assembled assemble() throws BadInputException {
        build.supply().ifPresent(this::supply);
        PartOf wiring = new PartOf(build, overlay);
        for (PartEntry entry : build.parts().values()) {
            for (Part part : wiring.parts(entry)) add(part, entry.path());
        }
        strays();
        couplings();
        for (TestPoint point : build.points().values()) if (overlay.probes().contains(point.name())) probe(point);
        Circuit circuit = Circuit.of(parts);
        if (overlay.temperature().isPresent())
            circuit = circuit.atTemperature(overlay.temperature().getAsDouble());
        List<Problem> warnings = new ArrayList<>();
        List<Problem> fatal = new ArrayList<>();
        FaultPlaces places = new FaultPlaces(build, origins);
        for (Fault fault : Structure.faults(circuit))
            (fault.kind().fatal() ? fatal : warnings).add(places.problem(fault));
        if (!fatal.isEmpty()) throw new BadInputException(fatal);
        Assembled base = new Assembled(circuit, origins, warnings);
        Knowledge knowledge = Knowledge.of(
                Unknowns.of(build, base),
                overlay.calibration().map(Calibration::unknowns).orElse(List.of()));
        return new Assembled(knowledge.typical(circuit), circuit, knowledge, origins, warnings);
    }

    private void add(Part part, String path) {
        parts.add(part);
        origins.put(part.name(), path);
    }

    private void supply(Supply supply) {
        Overlay.SupplyState state = overlay.supply().orElseGet(() -> state(supply));
        add(new Battery(Supply.NAME, supply.plus(), supply.minus(), state.voltage(), state.resistance()), Supply.NAME);
    }

    /** EMF and resistance of a supply as the build states it: of a battery, at its state of charge. */
    public static Overlay.SupplyState state(Supply supply) {
        if (supply instanceof Supply.OfVoltage given)
            return new Overlay.SupplyState(
                    given.voltage().value(), given.resistance().value());
        Supply.OfBattery named = (Supply.OfBattery) supply;
        galena.trade.battery.Battery battery = battery(named);
        return new Overlay.SupplyState(battery.emf(named.charge()), battery.resistance(named.charge()));
    }

    /** The battery that a supply names; reading has checked that it is held. */
    public static galena.trade.battery.Battery battery(Supply.OfBattery named) {
        if (galena.trade.battery.Battery.named(named.type()) instanceof BatteryLookup.Known known)
            return known.battery();
        throw new IllegalStateException("the battery " + named.type() + " passed the reading and is not held");
    }

    private void strays() {
        int number = 0;
        for (Stray stray : build.strays()) {
            number++;
            add(stray(stray, number), "strays[" + number + "]");
        }
        List<Stray> laidOver = new ArrayList<>(overlay.strays());
        overlay.calibration().map(Calibration::strays).ifPresent(laidOver::addAll);
        for (Stray stray : laidOver) {
            number++;
            parts.add(stray(stray, number));
        }
        overlay.calibration().map(Calibration::unknowns).orElse(List.of()).stream()
                .filter(known -> !known.between().isEmpty())
                .forEach(known -> parts.add(Unknowns.added(
                        known.of(), known.between().get(0), known.between().get(1))));
    }

    private static Capacitor stray(Stray stray, int number) {
        return new Capacitor(
                Names.stray(stray.from(), stray.to(), number),
                stray.from(),
                stray.to(),
                stray.capacitance().value());
    }

    private void couplings() {
        List<Coupled> all = inForce(build, overlay);
        for (Coupled coupled : all) {
            String name = Names.coupling(coupled.first(), coupled.second());
            parts.add(new Coupling(
                    name, coupled.first(), coupled.second(), coupled.k().value()));
            for (int i = 0; i < build.couplings().size(); i++)
                if (build.couplings().get(i).joins(coupled.first(), coupled.second()))
                    origins.put(name, "couplings[" + (i + 1) + "]");
        }
    }

    /** The couplings of the build, the calibration and the overlay; of several for one pair the last rules. */
    static List<Coupled> inForce(Build build, Overlay overlay) {
        List<Coupled> all = new ArrayList<>();
        List<Coupled> written = new ArrayList<>(build.couplings());
        overlay.calibration().map(Calibration::couplings).ifPresent(written::addAll);
        written.addAll(overlay.couplings());
        for (Coupled coupled : written) {
            all.removeIf(earlier -> earlier.joins(coupled.first(), coupled.second()));
            all.add(coupled);
        }
        return all;
    }

    private void probe(TestPoint point) {
        point.probe()
                .ifPresent(probe -> add(
                        new Load(
                                Names.probe(point.name()),
                                point.at(),
                                point.to(),
                                probe.resistance(),
                                probe.capacitance()),
                        "points." + point.name()));
    }

    /** What a calibration says of one part. */
    static Optional<Calibration.Correction> correction(Overlay overlay, String part) {
        return overlay.calibration().flatMap(c -> Optional.ofNullable(c.parts().get(part)));
    }
}
