using CapPrep.Drawing.Sheets;
using CapPrep.Engine;
using CapPrep.Engine.Measures;

namespace CapPrep.Drawing.Caps;

/// <summary>The design on its cap, or alone where the cap style is unknown.</summary>
internal sealed class CapPicture(SheetPad pad, Preparation preparation)
{
    /// <summary>Shown of the brim below its seam, mm.</summary>
    private const double BrimShown = 10;

    private readonly ThreadInks _inks = new(preparation);

    /// <summary>Box of the design in cap-front mm; on the tape's own zero where nothing was seated.</summary>
    public BoxMm Design => (preparation.Seating?.Box ?? preparation.Facts.Extents).ToMillimeters();

    public ThreadInks Inks => _inks;

    /// <summary>What should be seen: the design with room for its dimensions, the zone's width and the brim.</summary>
    public BoxMm Needed(double halfWidth, double room)
    {
        var design = Design;
        return preparation.Seating is null
            ? new BoxMm(design.Left - room, design.Bottom - room, design.Right + room, design.Top + room)
            : new BoxMm(
                Math.Min(-halfWidth, design.Left - room),
                Math.Min(-BrimShown, design.Bottom - room),
                Math.Max(halfWidth, design.Right + room),
                design.Top + room);
    }

    /// <summary>
    /// A view of what should be seen: no more of the front than the window shows at true size; a design without a cap
    /// stands in the middle.
    /// </summary>
    public CapView View(SheetBox window, double halfWidth, double room)
    {
        var needed = Needed(Math.Min(halfWidth, window.Width / 200.0), room);
        return preparation.Seating is null ? CapView.Centered(window, needed) : CapView.Fit(window, needed);
    }

    /// <param name="view">Where.</param>
    /// <param name="colored">Cloth in the cap's color; false: white paper, for printing in black.</param>
    public void Draw(CapView view, bool colored)
    {
        var cloth = colored ? ClothInk() : Ink.White;
        if (preparation is { Seating: { } seating, Setup.Style: { } style })
        {
            var front = new CapFront(pad, view, style, preparation.Setup.Frame, seating.Zone, cloth);
            front.Cloth();
            front.Lines();
        }

        ThreadPicture.Draw(pad, view, preparation, _inks, cloth);
    }

    private Ink ClothInk() =>
        Ink.TryParse(preparation.Ticket.Received.CapColor?.Color, out var cloth) ? cloth : Ink.Cloth;
}
