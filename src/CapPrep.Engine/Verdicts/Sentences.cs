namespace CapPrep.Engine.Verdicts;

/// <summary>Puts sentences together as long as there is room.</summary>
internal static class Sentences
{
    /// <summary>Longest summary, characters.</summary>
    internal const int Longest = 140;

    private const string More = " ...";

    /// <summary>The first one, shortened at a word if it must be, and each further one that still fits.</summary>
    internal static string Fit(params IEnumerable<string> sentences)
    {
        var text = "";
        foreach (var sentence in sentences.Where(sentence => sentence.Length > 0))
        {
            var longer = text.Length == 0 ? Shorten(sentence) : $"{text} {sentence}";
            text = longer.Length <= Longest ? longer : text;
        }

        return text;
    }

    private static string Shorten(string sentence)
    {
        if (sentence.Length <= Longest)
            return sentence;
        var end = sentence.LastIndexOf(' ', Longest - More.Length);
        return sentence[..(end > 0 ? end : Longest - More.Length)].TrimEnd(',', ';', ':', '.') + More;
    }
}
