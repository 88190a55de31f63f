package galena.trade.ferrite;

import galena.trade.coil.Former;
import galena.trade.wire.Wire;
import java.util.List;

/**
 * A ring core to wind one layer on.
 *
 * @param core the ring
 * @param material its ferrite or powder; the tolerance of its permeability counts
 * @param coverage part of the round that may be wound, 0 to 1
 * @param wire to wind with
 */
public record ToroidFormer(Toroid core, Material material, double coverage, Wire wire) implements Former {
    @Override
    public ToroidCoil wind(double turns) {
        return new ToroidCoil(core, material, turns, coverage, wire);
    }

    @Override
    public double mostTurns() {
        return ToroidCoil.mostTurns(core, coverage, wire);
    }

    @Override
    public List<Variation> variations() {
        double mu = material.permeability(), tolerance = material.tolerance();
        double weakest = Math.max(ToroidCoil.LEAST_PERMEABILITY, mu * (1 - tolerance));
        double strongest = Math.min(Material.MOST_PERMEABLE, mu * (1 + tolerance));
        return List.of(new Variation("permeability", of(weakest), of(strongest)));
    }

    private ToroidFormer of(double permeability) {
        return new ToroidFormer(core, material.withPermeability(permeability), coverage, wire);
    }
}
