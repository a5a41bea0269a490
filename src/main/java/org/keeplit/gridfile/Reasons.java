package org.keeplit.gridfile;

import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;

/** Which classes are carried, and why others are not. */
final class Reasons {
    /** Classes of which something is carried; of these, what the translations do not come across is of no use to them. */
    private static final ImmutableSet<String> CARRIED = ImmutableSet.<String>builder()
            .addAll(SwitchTranslator.KINDS.keySet())
            .add("ACLineSegment", "ACLineSegmentPhase", "PerLengthPhaseImpedance", "PerLengthSequenceImpedance", "PhaseImpedanceData")
            .add("WireSpacingInfo", "WirePosition", "OverheadWireInfo", "ConcentricNeutralCableInfo", "TapeShieldCableInfo", "Clamp")
            .add("SwitchPhase", "Terminal", "ConnectivityNode", "BaseVoltage", "Location", "OperationalLimitSet", "OperationalLimitType", "CurrentLimit")
            .add("PowerTransformer", "PowerTransformerEnd", "TransformerTank", "TransformerTankEnd", "TransformerTankInfo", "TransformerEndInfo")
            .add("ShortCircuitTest", "TransformerMeshImpedance", "TransformerStarImpedance", "RatioTapChanger", "TapChangerControl")
            .add("LinearShuntCompensator", "LinearShuntCompensatorPhase", "EnergyConsumer", "EnergyConsumerPhase", "LoadResponseCharacteristic")
            .add("ConformLoad", "NonConformLoad", "EnergySource", "PowerElectronicsConnection", "PowerElectronicsConnectionPhase")
            .add("PhotovoltaicUnit", "BatteryUnit", "PowerElectronicsWindUnit", "SynchronousMachine", "AsynchronousMachine", "Feeder", "IEC61970CIMVersion")
            .build();

    private static final String UNUSED = "nothing that is carried refers to it";
    private static final String LIMITS = "a network text has one band of voltage for all of it; say it by hand: limits voltage 95 % to 105 %";

    private static final ImmutableMap<String, String> REASONS = ImmutableMap.<String, String>builder()
            .put("CoordinateSystem", "a network text has no coordinates")
            .put("PositionPoint", "a network text has no coordinates")
            .put("Location", "no other device stands there, and a network text has no coordinates")
            .put("GeographicalRegion", "a network text has no regions")
            .put("SubGeographicalRegion", "a network text has no regions")
            .put("Substation", "a network text has no substations; devices stand at sites")
            .put("VoltageLevel", "a network text has no voltage levels; nominal voltages follow from sources and transformers")
            .put("Bay", "a network text has no bays")
            .put("Line", "a network text has no lines of several sections; each section stands by itself")
            .put("TopologicalNode", "which nodes are joined follows from the switches")
            .put("TopologicalIsland", "what is connected follows from the switches")
            .put("VoltageLimit", LIMITS)
            .put("OperationalLimitSet", "only the normal current limits of lines and switches are carried")
            .put("OperationalLimitType", "only the normal current limits of lines and switches are carried")
            .put("CurrentLimit", "only the normal limits of lines and switches are carried; others have their own ratings, or none")
            .put("NoLoadTest", "the load flow has no core losses and no magnetizing current")
            .put("TransformerCoreAdmittance", "the load flow has no core losses and no magnetizing current")
            .put("RegulatingControl", "controls of capacitors are not carried: a bank is in or out; a switch that moves by itself is added by hand")
            .put("Ground", "a network text has no permanent grounds besides those of neutrals")
            .put("GroundDisconnector", "a network text has no switch to ground; it is brought to the job, or added by hand")
            .put("EarthFaultCompensator", "a network text has no impedances between neutral and ground")
            .put("PetersenCoil", "a network text has no impedances between neutral and ground")
            .put("GroundingImpedance", "a network text has no impedances between neutral and ground")
            .put("NonlinearShuntCompensator", "only linear banks are carried")
            .put("StaticVarCompensator", "a network text has no static compensators")
            .put("SeriesCompensator", "a network text has no series impedances besides lines")
            .put("EquivalentInjection", "a network text has no equivalents")
            .put("EquivalentBranch", "a network text has no equivalents")
            .put("BusbarSection", "a bus is its node")
            .put("Junction", "a junction is its node")
            .put("PhaseTapChangerLinear", "a network text has no phase shifters")
            .put("PhaseTapChangerAsymmetrical", "a network text has no phase shifters")
            .put("Analog", "measurements are of one moment")
            .put("Discrete", "measurements are of one moment")
            .put("Accumulator", "measurements are of one moment")
            .put("House", "buildings are not carried")
            .buildOrThrow();

    /** Classes of what carries current or serves customers. */
    private static final ImmutableSet<String> EQUIPMENT = ImmutableSet.<String>builder()
            .addAll(SwitchTranslator.KINDS.keySet())
            .add("ACLineSegment", "PowerTransformer", "TransformerTank", "LinearShuntCompensator", "EnergyConsumer", "ConformLoad", "NonConformLoad")
            .add("EnergySource", "PowerElectronicsConnection", "SynchronousMachine", "AsynchronousMachine", "GroundDisconnector", "Ground")
            .add("NonlinearShuntCompensator", "StaticVarCompensator", "SeriesCompensator", "EquivalentInjection", "EquivalentBranch")
            .build();

    private static final ImmutableSet<String> IDENTITY = ImmutableSet.of(
            "IdentifiedObject.mRID", "IdentifiedObject.name", "IdentifiedObject.aliasName", "IdentifiedObject.description");

    private Reasons() {}

    /** {@return why an object of a class is not carried that no translation came across; empty if no such class is known} */
    static String of(String type) {
        String reason = REASONS.get(type);
        return reason != null ? reason : CARRIED.contains(type) ? UNUSED : "";
    }

    static ImmutableSet<String> carried() {
        return CARRIED;
    }

    static boolean isEquipment(String type) {
        return EQUIPMENT.contains(type);
    }

    /** {@return whether an attribute only says what an object is called} */
    static boolean isIdentity(String key) {
        return IDENTITY.contains(key);
    }
}
