package galena.trade.field;

/**
 * A loop or rod coil as an aerial. As a dipole it is right to 2 % from twelve radii (or rod lengths) off; at three radii
 * the field on the axis is 15 % lower than the dipole says, by (1 + a²/r²)^(−3/2).
 *
 * @param turns N
 * @param area mean area of a turn (m²)
 * @param coreGain times that a rod concentrates the flux through the coil: apparent permeability where the coil sits; 1
 *     for an air-cored loop
 */
public record Loop(double turns, double area, double coreGain) {
    public Loop {
        FreeSpace.positive(turns, "number of turns");
        FreeSpace.positive(area, "area");
        FreeSpace.positive(coreGain, "core gain");
    }

    /** N·A·µ (m²): moment per ampere. */
    public double momentPerAmpere() {
        return turns * area * coreGain;
    }

    /** The dipole that a current (A) makes of it. */
    public MagneticDipole carrying(double current, double frequency) {
        return new MagneticDipole(momentPerAmpere() * current, frequency);
    }

    /** R = η·k⁴·(N·A·µ)²/6π (Ω), the 31171·(N·A/λ²)² of the handbooks. */
    public double radiationResistance(double frequency) {
        return new MagneticDipole(momentPerAmpere(), frequency).radiatedPower();
    }

    /** Effective height (m): open-circuit volts per V/m of a far field, k·N·A·µ. */
    public double effectiveHeight(double frequency) {
        return FreeSpace.waveNumber(frequency) * momentPerAmpere();
    }
}
