using System.Globalization;
using System.Net;
using CapPrep.Service.Access;

namespace CapPrep.Service.Plumbing;

/// <summary>What reading the settings gives: the settings, or one line per wrong row.</summary>
internal sealed record SettingsReading(Settings? Settings, IReadOnlyList<string> Faults, IReadOnlyList<string> Warnings);

/// <summary>
/// Reads the section <c>CapPrep</c>. Every wrong row is named with its value and its bounds, all in one run; a name
/// that no row has is wrong too.
/// </summary>
internal sealed class SettingsReader(IConfiguration configuration)
{
    /// <summary>The name of the section.</summary>
    public const string Section = "CapPrep";

    /// <summary>Waits before attempts 1 to 12, seconds; 96 h 36 min 5 s together.</summary>
    public static readonly IReadOnlyList<int> StandardWaits =
        [0, 5, 60, 300, 1800, 7200, 21600, 43200, 43200, 64800, 79200, 86400];

    private const int NinetySixHours = 345_600;

    private readonly IConfigurationSection _section = configuration.GetSection(Section);
    private readonly HashSet<string> _known = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<string> _faults = [];
    private readonly List<string> _warnings = [];

    public static SettingsReading Read(IConfiguration configuration) => new SettingsReader(configuration).Read();

    private SettingsReading Read()
    {
        var dataFolder = Path.GetFullPath(Text("DataFolder") ?? ".capprep");
        var database = Database();
        var settings = new Settings
        {
            Roles = Roles(),
            DataFolder = dataFolder,
            Database = database,
            Access = new AccessSettings(ManageKey()),
            SecretsKeyFile = SecretsKeyFile(dataFolder, database),
            Http = Http(),
            Uploads = new UploadSettings(
                Whole("Uploads:MaxTapeBytes", 1_048_576, 515, 8_388_608),
                Whole("Uploads:MaxRecords", 200_000, 1, 2_000_000),
                Whole("Uploads:MaxTicketBytes", 65_536, 256, 262_144)),
            QueueMaxWaiting = Whole("Queue:MaxWaiting", 10_000, 1, 1_000_000),
            Workers = Workers(),
            HotFolders = HotFolders(),
            Webhooks = Webhooks(),
            CardsQrPrefix = Short("Cards:QrPrefix", 60),
            Retention = new RetentionSettings(
                Whole("Retention:JobDays", 730, 1, 3650),
                Whole("Retention:PictureDays", 90, 1, 3650),
                Whole("Retention:TapeDays", 730, 1, 3650),
                Whole("Retention:EventDays", 30, 7, 3650),
                Whole("Retention:AttemptDays", 30, 1, 3650)),
        };
        RefuseUnknown(_section);
        return new SettingsReading(_faults.Count == 0 ? settings : null, _faults, _warnings);
    }

    private IReadOnlyList<Role> Roles()
    {
        var words = (Text("Roles") ?? "api,worker,folder").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var roles = new List<Role>();
        foreach (var word in words)
        {
            if (Enum.TryParse<Role>(word, ignoreCase: true, out var role) && char.IsLetter(word[0]))
                roles.Add(role);
            else
                Fault("Roles", word, "any of api, worker, folder, with commas between");
        }

        if (words.Length == 0)
            Fault("Roles", "", "any of api, worker, folder, at least one");
        return [.. roles.Distinct().Order()];
    }

    private DatabaseSettings Database()
    {
        var provider = Text("Database:Provider") switch
        {
            null or "sqlite" => DatabaseProvider.Sqlite,
            "postgres" => DatabaseProvider.Postgres,
            var other => Fault("Database:Provider", other, "sqlite or postgres", DatabaseProvider.Sqlite),
        };
        var connection = Text("Database:ConnectionString");
        if (provider == DatabaseProvider.Postgres && connection is null)
            Fault("Database:ConnectionString", "", "a PostgreSQL connection string; required with Database:Provider postgres");
        if (provider == DatabaseProvider.Sqlite && connection is not null)
            Fault("Database:ConnectionString", "(not shown)", "nothing with Database:Provider sqlite, whose file lies in DataFolder");
        return new DatabaseSettings(provider, connection, Flag("Database:MigrateAtStart", true));
    }

    private string? ManageKey()
    {
        var key = Text("Access:ManageKey");
        var file = Text("Access:ManageKeyFile");
        if (key is not null && file is not null)
            Fault("Access:ManageKeyFile", file, "nothing when Access:ManageKey is set");
        if (key is null && file is not null)
            key = FileText("Access:ManageKeyFile", file);
        if (key is null || KeyForm.IsWellFormed(key))
            return key;
        Fault(file is null ? "Access:ManageKey" : "Access:ManageKeyFile", "(not shown)", "a key as 'key new' prints it");
        return null;
    }

    private string SecretsKeyFile(string dataFolder, DatabaseSettings database)
    {
        var file = Text("Secrets:KeyFile");
        if (file is null && database.Provider == DatabaseProvider.Postgres)
            Fault("Secrets:KeyFile", "", "a file with 32 random bytes in base64; required with Database:Provider postgres");
        return Path.GetFullPath(file ?? Path.Combine(dataFolder, "secrets.key"));
    }

    private HttpSettings Http()
    {
        var management = Text("Http:ManagementUrl") ?? "http://127.0.0.1:5081";
        return new HttpSettings(
            Text("Http:PublicUrl") is { } url ? WebUrl("Http:PublicUrl", url, "an absolute http or https address") : null,
            management == "off" ? null : WebUrl("Http:ManagementUrl", management, "an absolute http or https address, or off"),
            [.. List("Http:TrustedProxies").Select(text => Network("Http:TrustedProxies", text)).OfType<IPNetwork>()],
            Whole("Http:MaxWaitSeconds", 20, 0, 60),
            Whole("Http:MaxWaiting", 64, 0, 1000),
            Whole("Http:RequestsPerMinute", 600, 1, 100_000));
    }

    private WorkerSettings Workers()
    {
        var count = Whole("Workers:Count", 0, 0, 64);
        return new WorkerSettings(
            count == 0 ? Environment.ProcessorCount : count,
            Whole("Workers:LeaseSeconds", 30, 5, 300),
            Whole("Workers:MaxAttempts", 3, 1, 10),
            Whole("Workers:JobTimeoutSeconds", 30, 5, 600));
    }

    private IReadOnlyList<HotFolderSettings> HotFolders()
    {
        var folders = new List<HotFolderSettings>();
        foreach (var row in _section.GetSection("HotFolders").GetChildren())
        {
            var at = $"HotFolders:{row.Key}";
            var root = Text($"{at}:Root");
            if (root is null || !Path.IsPathFullyQualified(root))
                Fault($"{at}:Root", root ?? "", "an absolute path");
            else
                root = Path.TrimEndingDirectorySeparator(Path.GetFullPath(root));
            if (root is not null && folders.Any(other => IsOneInTheOther(other.Root, root)))
                Fault($"{at}:Root", root, "a folder of its own, neither another hot folder's nor inside one");
            folders.Add(new HotFolderSettings(
                root ?? "",
                Text($"{at}:Shop") ?? "main",
                Whole($"{at}:QuietSeconds", 2, 1, 600),
                Whole($"{at}:ScanSeconds", 2, 1, 600),
                Whole($"{at}:PatienceMinutes", 10, 1, 1440),
                Whole($"{at}:KeepDays", 30, 0, 3650)));
        }

        return folders;
    }

    private static bool IsOneInTheOther(string one, string other)
    {
        static string Closed(string path) => path + Path.DirectorySeparatorChar;
        return one.Length > 0 && (Closed(one).StartsWith(Closed(other), StringComparison.OrdinalIgnoreCase)
            || Closed(other).StartsWith(Closed(one), StringComparison.OrdinalIgnoreCase));
    }

    private WebhookSettings Webhooks()
    {
        var networks = List("Webhooks:AllowedNetworks").Select(AllowedNetwork).OfType<AllowedNetwork>();
        return new WebhookSettings(
            [.. networks],
            Whole("Webhooks:Concurrency", 16, 1, 128),
            Whole("Webhooks:PerEndpoint", 4, 1, 16),
            Whole("Webhooks:TimeoutSeconds", 20, 1, 30),
            Waits(),
            Whole("Webhooks:SwitchOffAfterHours", 120, 24, 720));
    }

    private IReadOnlyList<int> Waits()
    {
        const string Name = "Webhooks:WaitsSeconds";
        var texts = List(Name);
        if (texts.Count == 0)
            return StandardWaits;
        var waits = texts.Select((text, i) => Whole($"{Name}:{i}", text, 0, 0, 86_400)).ToArray();
        if (waits.Length > 20)
            Fault(Name, $"{waits.Length} entries", "1 to 20 entries of 0 to 86400");
        if (waits.Sum(wait => (long)wait) is var sum && sum < NinetySixHours)
            _warnings.Add($"{Section}:{Name} adds up to {sum} s, less than the 96 h (345600 s) that a receiver may be away over a long weekend.");
        return waits;
    }

    private AllowedNetwork? AllowedNetwork(string text)
    {
        const string Name = "Webhooks:AllowedNetworks";
        var (network, port) = (text, (int?)null);
        if (IPEndPoint.TryParse(text, out var end) && end.Port != 0)
            (network, port) = (end.Address.ToString(), end.Port);
        return Network(Name, network) is { } parsed ? new AllowedNetwork(parsed, port) : null;
    }

    private IPNetwork? Network(string name, string text)
    {
        if (IPNetwork.TryParse(text, out var network))
            return network;
        if (IPAddress.TryParse(text, out var address))
            return new IPNetwork(address, address.GetAddressBytes().Length * 8);
        Fault(name, text, "an address such as 192.168.5.20, an address with port, or a network such as 10.1.0.0/16");
        return null;
    }

    private Uri? WebUrl(string name, string text, string bounds)
    {
        if (Uri.TryCreate(text, UriKind.Absolute, out var url) && url.Scheme is "http" or "https")
            return url;
        Fault(name, text, bounds);
        return null;
    }

    private string Short(string name, int longest)
    {
        var text = Text(name) ?? "";
        if (text.Length > longest)
            Fault(name, text, string.Create(CultureInfo.InvariantCulture, $"at most {longest} characters"));
        return text;
    }

    private bool Flag(string name, bool standard) => Text(name) switch
    {
        null => standard,
        var text when bool.TryParse(text, out var flag) => flag,
        var text => Fault(name, text, "true or false", standard),
    };

    private int Whole(string name, int standard, int least, int most) => Whole(name, Text(name), standard, least, most);

    private int Whole(string name, string? text, int standard, int least, int most)
    {
        if (text is null)
            return standard;
        if (int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value) && value >= least && value <= most)
            return value;
        return Fault(name, text, string.Create(CultureInfo.InvariantCulture, $"a whole number from {least} to {most}"), standard);
    }

    private string? FileText(string name, string file)
    {
        try
        {
            return File.ReadAllText(file).Trim();
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            Fault(name, file, "a readable file");
            return null;
        }
    }

    /// <summary>A list is either indexed rows or one text with commas.</summary>
    private IReadOnlyList<string> List(string name)
    {
        _known.Add(name);
        var section = _section.GetSection(name);
        if (section.Value is { } line)
            return line.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var rows = section.GetChildren().ToArray();
        foreach (var row in rows)
            _known.Add($"{name}:{row.Key}");
        return [.. rows.Select(row => row.Value ?? "")];
    }

    private string? Text(string name)
    {
        _known.Add(name);
        var text = _section[name];
        return string.IsNullOrWhiteSpace(text) ? null : text.Trim();
    }

    private void RefuseUnknown(IConfigurationSection section)
    {
        foreach (var child in section.GetChildren())
        {
            var name = child.Path[(Section.Length + 1)..];
            if (child.Value is not null && !_known.Contains(name))
                _faults.Add($"{Section}:{name} is set, but there is no such setting.");
            RefuseUnknown(child);
        }
    }

    private T Fault<T>(string name, string value, string bounds, T standard)
    {
        Fault(name, value, bounds);
        return standard;
    }

    private void Fault(string name, string value, string bounds) =>
        _faults.Add($"{Section}:{name} is '{value}'; allowed: {bounds}.");
}
