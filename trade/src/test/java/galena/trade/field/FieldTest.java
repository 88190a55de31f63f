package galena.trade.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import galena.proof.Kind;
import galena.proof.Published;
import galena.trade.source.DataTable;
import galena.trade.source.PublishedRows;
import java.math.BigDecimal;
import org.junit.jupiter.api.Test;

class FieldTest {
    /** The last digits of CODATA's µ0 that different editions print. */
    private static final double CODATA = 1e-9;

    @Test
    void agrees_with_every_published_field_and_resistance() {
        int compared = 0;
        for (DataTable.Row row : PublishedRows.of("fields.csv")) {
            Published source = Published.source("trade", kind(row), row.text("source"));
            String what = row.text("group") + ", " + row.text("case") + ", " + row.text("quantity") + " at "
                    + row.text("frequency_Hz") + " Hz " + row.text("distance_m") + " m";
            source.matches(what, row.required("value"), found(row), halfOfLastDigit(row.text("value")));
            compared++;
        }
        assertThat(compared).isEqualTo(81);
    }

    private static double halfOfLastDigit(String printed) {
        BigDecimal value = new BigDecimal(printed);
        return value.ulp().doubleValue() / 2 + CODATA * Math.abs(value.doubleValue());
    }

    private static Kind kind(DataTable.Row row) {
        return row.text("basis").equals("seen") ? Kind.STANDARD : Kind.CLOSED_FORM;
    }

    private static double found(DataTable.Row row) {
        String text = row.text("case");
        return switch (row.text("group")) {
            case "magnetic_dipole" -> dipole(row);
            case "near_field_boundary" -> FreeSpace.nearFieldBoundary(row.required("frequency_Hz"));
            case "loop_radiation" ->
                text.startsWith("moment")
                        ? new MagneticDipole(1, row.required("frequency_Hz")).radiatedPower()
                        : new Loop(number(text, "N="), number(text, "area "), 1)
                                .radiationResistance(row.required("frequency_Hz"));
            case "short_monopole" ->
                ShortWire.vertical(number(text, "height "), 1e-3).radiationResistance(row.required("frequency_Hz"));
            case "reference_field" ->
                text.startsWith("same")
                        ? ReferenceRadiator.exactField(1000, row.required("distance_m"))
                        : ReferenceRadiator.field(
                                text.startsWith("1 kW") ? 1000 : number(text, "radiated "), row.required("distance_m"));
            case "power_for_limit" ->
                ReferenceRadiator.powerFor(number(row.text("quantity"), "for ") * 1e-6, row.required("distance_m"));
            case "basic_transmission_loss" -> ReferenceRadiator.basicTransmissionLoss(1e6, 0);
            default -> throw row.fault("group", "no check for this kind of row");
        };
    }

    private static double dipole(DataTable.Row row) {
        MagneticDipole dipole = new MagneticDipole(1, row.required("frequency_Hz"));
        double r = row.required("distance_m");
        PointField side = dipole.broadside(r);
        return switch (row.text("quantity")) {
            case "H axial (theta=0)" -> dipole.onAxis(r).greatestH();
            case "H equatorial (theta=90)" -> side.greatestH();
            case "E equatorial (theta=90)" -> side.greatestE();
            case "wave impedance E/H equatorial" -> side.greatestE() / side.greatestH();
            case "H axial quasi-static" -> limit(dipole, r, true);
            case "H equatorial far-field term only" -> limit(dipole, r, false);
            default -> throw row.fault("quantity", "no check for this quantity");
        };
    }

    /** The near-field or far-field term alone: the whole field far inside or outside λ/2π, scaled by its power of r. */
    private static double limit(MagneticDipole dipole, double r, boolean near) {
        double scale = near ? 1e-6 : 1e6;
        PointField field = near ? dipole.onAxis(r * scale) : dipole.broadside(r * scale);
        return field.greatestH() * Math.pow(scale, near ? 3 : 1);
    }

    private static double number(String text, String after) {
        String rest = text.substring(text.indexOf(after) + after.length());
        return Double.parseDouble(rest.split("[ ,]")[0]);
    }

    @Test
    void radiated_power_is_the_flux_through_a_distant_sphere() {
        for (Radiator each : new Radiator[] {new MagneticDipole(2, 1e6), new ElectricDipole(3, 1e6, false)}) {
            double r = 2e6;
            double power = 0;
            int n = 2000;
            for (int i = 0; i < n; i++) {
                double angle = Math.PI * (i + 0.5) / n;
                PointField f = each.at(r, angle);
                power += f.totalE() * f.totalH() * 2 * Math.PI * r * r * Math.sin(angle) * Math.PI / n;
            }
            Published.source("trade", Kind.CLOSED_FORM, "power through a sphere, integral of E·H")
                    .matchesRelative(
                            each.getClass().getSimpleName() + " radiated power", each.radiatedPower(), power, 1e-5);
        }
    }

    @Test
    void electric_and_magnetic_dipoles_are_dual() {
        double k = FreeSpace.waveNumber(1e6);
        for (double r : new double[] {0.5, 5, 50, 500}) {
            for (double angle : new double[] {0, 0.4, 1.1, Math.PI / 2}) {
                PointField loop = new MagneticDipole(1, 1e6).at(r, angle);
                PointField wire = new ElectricDipole(k, 1e6, false).at(r, angle);
                assertThat(wire.greatestE())
                        .isCloseTo(loop.greatestH() * FreeSpace.IMPEDANCE, within(1e-9 * wire.greatestE()));
                assertThat(wire.totalH() * FreeSpace.IMPEDANCE).isCloseTo(loop.totalE(), within(1e-9 * wire.totalE()));
            }
        }
    }

    @Test
    void nothing_at_any_angle_exceeds_the_worst_of_axis_and_broadside() {
        for (Radiator each : new Radiator[] {new MagneticDipole(1, 1e6), new ElectricDipole(1, 1e6, false)}) {
            for (double r : new double[] {3, 30, 48, 90, 112, 300}) {
                for (int i = 0; i <= 90; i++) {
                    PointField field = each.at(r, Math.toRadians(i));
                    assertThat(field.greatestH()).isLessThanOrEqualTo(each.worstH(r) * (1 + 1e-12));
                    assertThat(field.greatestE()).isLessThanOrEqualTo(each.worstE(r) * (1 + 1e-12));
                    assertThat(field.totalH()).isGreaterThanOrEqualTo(field.greatestH() * (1 - 1e-12));
                }
            }
        }
    }

    /** The same wire by its base current: 160π²·(he/λ)² against the power of the dipole with its image. */
    @Test
    void a_wire_over_ground_radiates_what_its_resistance_says_and_makes_the_reference_field() {
        ShortWire wire = new ShortWire(3, 0.5e-3, 0, 20e-12);
        double current = 0.02;
        ElectricDipole dipole = wire.asDipole(current, 1e6);
        double power = current * current * wire.radiationResistance(1e6);
        // 160π² stands for η = 120π, 7e-4 above the exact value.
        assertThat(dipole.radiatedPower()).isCloseTo(power, within(1e-3 * power));
        Published.source("trade", Kind.STANDARD, "ITU-R P.368, reference radiator")
                .matchesRelative(
                        "field of a short wire at 5 km from its radiated power",
                        ReferenceRadiator.exactField(dipole.radiatedPower(), 5000),
                        dipole.broadside(5000).greatestE(),
                        1e-4);
    }

    @Test
    void capacitance_of_a_wire_is_that_behind_the_short_monopole_reactance() {
        double h = 3, a = 0.5e-3;
        double closed = h / (60 * FreeSpace.LIGHT * (Math.log(h / a) - 1)) * 120 * Math.PI / FreeSpace.IMPEDANCE;
        Published.source(
                        "trade",
                        Kind.CLOSED_FORM,
                        "Balanis, Antenna Theory: short monopole, X = −60·(ln(h/a) − 1)/tan(kh)")
                .matchesRelative(
                        "capacitance of 3 m of 1 mm wire",
                        closed,
                        ShortWire.vertical(h, a).capacitance(),
                        1e-3);
        assertThat(ShortWire.vertical(h, a).capacitance()).isBetween(20e-12, 24e-12);
        assertThat(new ShortWire(h, a, 1, 0).capacitance())
                .isLessThan(ShortWire.vertical(h, a).capacitance());
        double isolated = 2 * Math.PI * FreeSpace.EPSILON * h / (Math.log(2 * h / a) - 1);
        assertThat(new ShortWire(h, a, 1e6, 0).capacitance()).isCloseTo(isolated, within(1e-3 * isolated));
        double line = 2 * Math.PI * FreeSpace.EPSILON / Math.log(2 * 5 / a);
        assertThat(ShortWire.horizontalCapacitance(1e4, a, 5) / 1e4).isCloseTo(line, within(1e-3 * line));
    }

    @Test
    void a_tuned_wire_splits_its_power_among_coil_ground_and_field() {
        ShortWire wire = ShortWire.vertical(3, 0.5e-3);
        ShortWire.Tuned tuned = wire.tuned(1e6, 200, 25);
        double omega = 2 * Math.PI * 1e6;
        assertThat(omega * tuned.inductance() * omega * wire.capacitance()).isCloseTo(1, within(1e-12));
        assertThat(tuned.coilLoss()).isCloseTo(omega * tuned.inductance() / 200, within(1e-9));
        double current = tuned.currentFor(0.1);
        double radiated = current * current * tuned.radiationResistance();
        assertThat(radiated / 0.1).isCloseTo(tuned.efficiency(), within(1e-12));
        assertThat(wire.effectiveHeight()).isEqualTo(1.5);
        assertThat(new ShortWire(3, 0.5e-3, 0, 1).effectiveHeight()).isCloseTo(3, within(1e-9));
        assertThatThrownBy(() -> wire.radiationResistance(30e6)).hasMessageContaining("not short");
    }

    @Test
    void the_moment_for_a_wanted_field_makes_that_field() {
        MagneticDipole dipole = MagneticDipole.forWorstH(0.1778e-6, 10, 1e6);
        assertThat(dipole.worstH(10)).isCloseTo(0.1778e-6, within(1e-18));
        assertThat(MagneticDipole.forE(24e-6, 30, 1e6).worstE(30)).isCloseTo(24e-6, within(1e-15));
        assertThat(dipole.scaled(2).moment()).isEqualTo(2 * dipole.moment());
        assertThatThrownBy(() -> dipole.at(0, 0)).hasMessageContaining("distance");
        assertThatThrownBy(() -> new MagneticDipole(Double.NaN, 1e6)).isInstanceOf(IllegalArgumentException.class);
    }

    /** Even taper leaves an even charge I/(jωh) on the wire; its field at the ground is an elementary integral. */
    @Test
    void beside_a_wire_the_field_is_that_of_its_charge() {
        double h = 3, f = 1e4, current = 1e-3;
        WireCurrent wire = ShortWire.vertical(h, 1e-3).carrying(current, f);
        Published source = Published.source(
                "trade",
                Kind.CLOSED_FORM,
                "evenly charged wire and image, E = q/(2πε0)·(1/ρ − 1/√(ρ² + h²)), quasi-static");
        for (double distance : new double[] {0.3, 1, 3, 10, 30}) {
            // Pieces of h/200 in the midpoint rule, and (kr)² left of the wave.
            double mesh = Math.pow(h / 200 / distance, 2) / 12;
            double nearlyStatic = 1e-5 + Math.pow(FreeSpace.waveNumber(f) * Math.max(distance, h), 2);
            double charge = current / (2 * Math.PI * f * h);
            double closed = charge / (2 * Math.PI * FreeSpace.EPSILON) * (1 / distance - 1 / Math.hypot(distance, h));
            source.matchesRelative(
                    "E of a 3 m wire at " + distance + " m", closed, wire.worstE(distance), mesh + nearlyStatic);
        }
        assertThatThrownBy(() -> wire.at(1.5, 0)).hasMessageContaining("on the wire");
    }

    @Test
    void far_from_a_wire_its_sum_is_one_dipole() {
        ShortWire wire = new ShortWire(3, 1e-3, 0, 20e-12);
        for (double distance : new double[] {100, 1000}) {
            double sum = wire.carrying(0.01, 1e6).worstE(distance);
            double dipole = wire.asDipole(0.01, 1e6).worstE(distance);
            assertThat(sum).isCloseTo(dipole, within(3e-3 * dipole));
            assertThat(wire.carrying(0.01, 1e6).worstH(distance))
                    .isCloseTo(wire.asDipole(0.01, 1e6).worstH(distance), within(3e-3 * dipole));
        }
    }
}
