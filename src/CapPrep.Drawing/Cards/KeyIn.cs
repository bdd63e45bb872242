using System.Globalization;
using CapPrep.Drawing.Sheets;
using CapPrep.Drawing.Texts;
using CapPrep.Engine;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Drawing.Cards;

/// <summary>What the operator keys in, in this order. Sides are the machine's, with the cap's in brackets.</summary>
internal sealed class KeyIn(JobFacts facts, Preparation preparation, SheetWords words)
{
    private readonly Machine _machine = preparation.Setup.Machine;

    /// <summary>Who turns the design for the frame, in one sentence.</summary>
    public string Turned => words[_machine.Tape.Turn180 == TurnedBy.Tape ? "card.turnedTape" : "card.turnedMachine"];

    /// <summary>For example <c>3 - 7 - 3</c>; a needle still to be threaded leaves room to write it in.</summary>
    public static string NeedleLine(IReadOnlyList<NeedleStep> plan) => string.Join(
        " - ", plan.Select(step => step.Needle?.ToString(CultureInfo.InvariantCulture) ?? "___"));

    public IReadOnlyList<string> Lines() =>
    [
        words.Say("keyIn.1", ("frame", preparation.Setup.Frame.Name)),
        words.Say("keyIn.2", ("tape", facts.TapeName)),
        words["keyIn.3"],
        words["keyIn.4"],
        Speed(),
        words.Say("keyIn.6", ("heads", HeadsOff())),
        StartPoint(),
        words[_machine.Heads > 1 ? "keyIn.8" : "keyIn.8single"],
        words["keyIn.9"],
        words["keyIn.10"],
    ];

    private string Speed()
    {
        var advice = preparation.Setup.Style!.Sewing;
        var speed = Text(Math.Min(advice.SpeedSpm, _machine.Speed.CapSpm));
        var foam = preparation.Ticket.Technique is Technique.Foam or Technique.PartFoam && advice.FoamSpeedSpm is { } over
            ? Text(Math.Min(over, _machine.Speed.CapSpm))
            : null;
        return foam is null
            ? words.Say("keyIn.5", ("speed", speed))
            : words.Say("keyIn.5foam", ("speed", speed), ("foam", foam));
    }

    private string HeadsOff() => _machine.HeadsOff.Count == 0
        ? words["keyIn.noHeads"]
        : string.Join(", ", _machine.HeadsOff.Select(Text));

    private string StartPoint()
    {
        var start = Start();
        var up = new Tenths(start.Y).Millimeters;
        return words.Say(
            up < 0 ? "keyIn.7below" : "keyIn.7",
            ("across", Across(start)),
            ("up", Lengths.Of(Math.Abs(up), facts.Units)));
    }

    /// <summary>Where the tape to sew starts on the cap.</summary>
    private TapePoint Start() => preparation.Seating!.OnCap(preparation.TapeToSew?.OriginShift ?? TapePoint.Origin);

    private string Across(TapePoint start)
    {
        if (start.X == 0)
            return words["keyIn.onCenter"];
        var key = (start.X > 0 ? "keyIn.right" : "keyIn.left")
            + (_machine.Heads > 1 ? "" : "Single")
            + (_machine.BrimUpOnMachine ? "" : "Flipped");
        return words.Say(key, ("mm", Lengths.Mm(new Tenths(Math.Abs(start.X)).Millimeters)));
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
