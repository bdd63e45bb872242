using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Checks.OnTicket;

/// <summary>Locations as people say them; left and right are the wearer's.</summary>
internal static class Spoken
{
    internal static string Of(CapLocation location) => location switch
    {
        CapLocation.Front => "on the front",
        CapLocation.FrontLeft => "on the front, wearer's left",
        CapLocation.FrontRight => "on the front, wearer's right",
        CapLocation.Left => "on the wearer's left side",
        CapLocation.Right => "on the wearer's right side",
        CapLocation.Back => "on the back",
        CapLocation.Visor => "on the visor",
        CapLocation.Wrap => "around the cap",
        _ => throw new EngineFaultException($"No word for the location {location}."),
    };
}
