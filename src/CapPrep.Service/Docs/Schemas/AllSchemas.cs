using System.Text.Json.Nodes;

namespace CapPrep.Service.Docs.Schemas;

/// <summary>Every schema of the document by its name.</summary>
internal static class AllSchemas
{
    public static IReadOnlyDictionary<string, JsonObject> ByName() => new SortedDictionary<string, JsonObject>(
        Listed().ToDictionary(pair => pair.Key, pair => pair.Value), StringComparer.Ordinal);

    private static IEnumerable<KeyValuePair<string, JsonObject>> Listed() =>
    [
        .. Basics.All,
        .. TicketSchemas.All,
        .. JobSchemas.All,
        .. FindingSchemas.All,
        .. ResultSchemas.All,
        .. SewOrderSchemas.All,
        .. ShiftSchemas.All,
        .. TextLineSchemas.All,
        .. BriefSchemas.All,
        .. DecisionSchemas.All,
        .. RevisionSchemas.All,
        .. EventSchemas.All,
        .. CatalogSchemas.All,
        .. CapStyleSchemas.All,
        .. RuleBookSchemas.All,
        .. AccessSchemas.All,
        .. ListSchemas.All,
        .. ProblemSchemas.All,
    ];
}
