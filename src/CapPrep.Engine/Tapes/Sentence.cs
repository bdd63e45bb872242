using System.Globalization;

namespace CapPrep.Engine.Tapes;

/// <summary>Sentences with figures, the same in every culture.</summary>
internal static class Sentence
{
    public static string Of(FormattableString sentence) => sentence.ToString(CultureInfo.InvariantCulture);
}
