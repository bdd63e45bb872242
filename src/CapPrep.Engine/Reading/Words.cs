using System.Text.Json;

namespace CapPrep.Engine.Reading;

/// <summary>The words that stand for the members of an enumeration in JSON: the member's name in camel case.</summary>
public sealed class Words<T>
    where T : struct, Enum
{
    public static readonly Words<T> Standard = new();

    private readonly T[] _values = Enum.GetValues<T>();

    private Words() =>
        All = [.. _values.Select(value => JsonNamingPolicy.CamelCase.ConvertName(value.ToString()))];

    /// <summary>All words, in the order of the enumeration.</summary>
    public IReadOnlyList<string> All { get; }

    public string Of(T value) => All[Array.IndexOf(_values, value)];

    public bool TryParse(string word, out T value)
    {
        for (var i = 0; i < _values.Length; i++)
        {
            if (All[i] != word)
                continue;
            value = _values[i];
            return true;
        }

        value = default;
        return false;
    }
}
