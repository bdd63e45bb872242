using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;

namespace CapPrep.Service.Commands.Demo;

/// <summary>What every figure of the demo's designs begins with.</summary>
internal static class DraftSteps
{
    /// <summary>Goes to a figure, with a trim unless it is the first one, and ties in.</summary>
    /// <param name="draft">What is drawn.</param>
    /// <param name="entry">First needle point of the figure.</param>
    /// <param name="toward">A point under its later stitches, where the tie hides.</param>
    public static Draft BeginAt(this Draft draft, TapePoint entry, TapePoint toward) =>
        (draft.Moves is [] ? draft.Move(entry) : draft.Trim(entry)).Stitch(entry).Tie(toward);
}
