using System.Text.Json;
using CapPrep.Service.Tests.Bench;
using CapPrep.Service.Tests.Catalog;
using CapPrep.TestKit.Service;
using CapPrep.TestKit.Tapes;

namespace CapPrep.Service.Tests.Decisions;

/// <summary>What a person does with a finished job.</summary>
internal static class Deciding
{
    /// <summary>65 mm high: too tall for the front of the usual style.</summary>
    public static readonly byte[] TooTall = TapeBuilder.Seated(400, 650).ToBytes("TALL");

    /// <summary>Nothing holds it, and it has at least two findings.</summary>
    public static readonly byte[] Sewable = TapeBuilder.Seated(400, 200).ToBytes("SEWABLE");

    /// <summary>75 mm high: the needle would leave the field of the frame.</summary>
    public static readonly byte[] OutOfField = TapeBuilder.Seated(400, 750).ToBytes("FIELD");

    public static Task<Answer> Decide(this HttpClient client, string id, string body, string? key = null) =>
        client.Call(HttpMethod.Post, $"/v1/jobs/{id}/decision", body, ("Idempotency-Key", key));

    public static Task<Answer> Accept(this HttpClient client, string id, params int[] findings) => client.Decide(id, Body("accept", findings));

    public static Task<Answer> Reject(this HttpClient client, string id, params int[] findings) => client.Decide(id, Body("reject", findings));

    public static Task<Answer> Approve(this HttpClient client, string id) => client.Decide(id, Body("approveSample"));

    /// <summary>Without findings: none are named.</summary>
    public static string Body(string decision, params int[] findings) => findings.Length == 0
        ? $$"""{"decision":"{{decision}}","by":"Marta Quist"}"""
        : $$"""{"decision":"{{decision}}","by":"Marta Quist","findings":[{{string.Join(',', findings)}}]}""";

    public static async Task<JsonElement> Result(this ServiceUnderTest service, string id) =>
        (await service.Client.Get($"/v1/jobs/{id}/result", Array.Empty<(string, string)>())).Body;

    public static IEnumerable<string> Rules(this JsonElement result, string list) =>
        result.GetProperty(list).EnumerateArray().Select(one => one.Text("rule"));

    /// <summary>Number of the finding of a rule.</summary>
    public static int Number(this JsonElement result, string rule) =>
        result.GetProperty("findings").EnumerateArray().First(one => one.Text("rule") == rule).GetProperty("number").GetInt32();
}
