namespace CapPrep.Service.Commands;

/// <summary>
/// The options of one command: <c>--name value</c> or <c>--name=value</c>. Options that are settings, such as
/// <c>--urls</c> or <c>--CapPrep:DataFolder</c>, are kept apart for the configuration.
/// </summary>
internal sealed class Options
{
    private readonly Dictionary<string, string> _values = new(StringComparer.Ordinal);

    private Options(IReadOnlyList<string> words, IReadOnlyList<string> settings)
    {
        Words = words;
        Settings = [.. settings];
    }

    /// <summary>What stands without a name, in order.</summary>
    public IReadOnlyList<string> Words { get; }

    /// <summary>Arguments for the configuration.</summary>
    public string[] Settings { get; }

    /// <exception cref="WrongCommandLineException">An option is not among <paramref name="allowed"/> or lacks its value.</exception>
    public static Options Parse(string[] args, params string[] allowed)
    {
        var words = new List<string>();
        var settings = new List<string>();
        var values = new List<(string Name, string Value)>();
        for (var i = 0; i < args.Length; i++)
        {
            if (!args[i].StartsWith("--", StringComparison.Ordinal))
            {
                words.Add(args[i]);
                continue;
            }

            var (name, value) = Split(args, ref i);
            if (IsSetting(name))
                settings.Add($"--{name}={value}");
            else if (allowed.Contains(name))
                values.Add((name, value));
            else
                throw new WrongCommandLineException($"There is no option '--{name}' here.");
        }

        var options = new Options(words, settings);
        foreach (var (name, value) in values)
            options._values[name] = value;
        return options;
    }

    public string? Find(string name) => _values.GetValueOrDefault(name);

    public string Require(string name) =>
        Find(name) ?? throw new WrongCommandLineException($"The option '--{name}' is missing.");

    private static (string Name, string Value) Split(string[] args, ref int i)
    {
        var text = args[i][2..];
        var equals = text.IndexOf('=');
        if (equals >= 0)
            return (text[..equals], text[(equals + 1)..]);
        if (i + 1 >= args.Length)
            throw new WrongCommandLineException($"The option '--{text}' lacks its value.");
        return (text, args[++i]);
    }

    private static bool IsSetting(string name) =>
        name.Equals("urls", StringComparison.OrdinalIgnoreCase)
        || name.StartsWith("CapPrep:", StringComparison.OrdinalIgnoreCase)
        || name.StartsWith("Serilog:", StringComparison.OrdinalIgnoreCase);
}
