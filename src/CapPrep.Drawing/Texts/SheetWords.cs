using System.Text.Json;

namespace CapPrep.Drawing.Texts;

/// <summary>The words printed on sheets, one file per language. A language without a file is printed in English.</summary>
internal sealed class SheetWords
{
    private const string Fallback = "en";

    private readonly Dictionary<string, string> _texts;

    private SheetWords(string language)
    {
        Language = language;
        using var file = JsonDocument.Parse(Embedded.Bytes(Resource(language)));
        _texts = file.RootElement.EnumerateObject().ToDictionary(text => text.Name, text => text.Value.GetString() ?? "");
    }

    public string Language { get; }

    /// <exception cref="KeyNotFoundException">The file lacks the text.</exception>
    public string this[string key] => _texts[key];

    public static SheetWords In(string language) =>
        new(language.Length == 2 && Embedded.Holds(Resource(language)) ? language : Fallback);

    /// <summary>A text with its <c>{names}</c> filled in.</summary>
    public string Say(string key, params ReadOnlySpan<(string Name, string Value)> values)
    {
        var text = _texts[key];
        foreach (var (name, value) in values)
            text = text.Replace("{" + name + "}", value, StringComparison.Ordinal);
        return text;
    }

    private static string Resource(string language) => $"Texts/{language}.json";
}
