using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.Service.Commands.Demo;

/// <summary>What every figure of the demo's designs begins with.</summary>
internal static class DraftSteps
{
    /// <summary>Goes to a figure, by a trim where thread was sewn before it, and ties in.</summary>
    /// <param name="draft">What is drawn.</param>
    /// <param name="entry">First needle point of the figure.</param>
    /// <param name="toward">A point under its later stitches, where the tie hides.</param>
    public static Draft BeginAt(this Draft draft, TapePoint entry, TapePoint toward)
    {
        var connected = draft.Moves is not ([] or [.., { Kind: RecordKind.ColorStop }]);
        return (connected ? draft.Trim(entry) : draft.Move(entry)).Stitch(entry).Tie(toward);
    }
}
