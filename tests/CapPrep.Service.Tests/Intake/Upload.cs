using System.Net.Http.Headers;
using System.Text;
using System.Text.Json.Nodes;
using CapPrep.TestKit.Tapes;

namespace CapPrep.Service.Tests.Intake;

/// <summary>Makes the requests of the tests: small invented designs and their tickets.</summary>
internal static class Upload
{
    public const string Address = "/v1/jobs";

    public static readonly byte[] Tape = TapeBuilder.Crest().ToBytes("CREST");

    public static readonly byte[] OtherTape = TapeBuilder.Seated(400, 200).ToBytes("BOX");

    /// <summary>The shortest ticket there is, and what is put beside it.</summary>
    public static string Ticket(string orderNumber, params (string Name, JsonNode? Value)[] more)
    {
        var ticket = new JsonObject { ["orderNumber"] = orderNumber, ["capStyle"] = "six-panel-structured-mid", ["quantity"] = 48 };
        foreach (var (name, value) in more)
            ticket[name] = value;
        return ticket.ToJsonString();
    }

    public static MultipartFormDataContent Parts(
        string ticket, byte[] tape, string? fileName = "crest.dst", string? boundary = null, bool tapeFirst = false)
    {
        var content = boundary is null ? new MultipartFormDataContent() : new MultipartFormDataContent(boundary);
        if (tapeFirst)
            AddTape(content, tape, fileName);
        content.Add(new StringContent(ticket, Encoding.UTF8, "application/json"), "ticket");
        if (!tapeFirst)
            AddTape(content, tape, fileName);
        return content;
    }

    public static StringContent Json(string ticket, byte[] tape) =>
        new($"{{ \"tape\": \"{Convert.ToBase64String(tape)}\",\n \"ticket\": {ticket} }}", Encoding.UTF8, "application/json");

    /// <summary>Sends what is given, with further headers.</summary>
    public static async Task<Answer> Post(this HttpClient client, HttpContent content, params (string Name, string Value)[] headers)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, Address) { Content = content };
        foreach (var (name, value) in headers)
            request.Headers.TryAddWithoutValidation(name, value);
        using var response = await client.SendAsync(request);
        return await Answer.Of(response);
    }

    public static Task<Answer> Post(this HttpClient client, string ticket, byte[] tape, params (string Name, string Value)[] headers) =>
        client.Post(Parts(ticket, tape), headers);

    private static void AddTape(MultipartFormDataContent content, byte[] tape, string? fileName)
    {
        var part = new ByteArrayContent(tape) { Headers = { ContentType = new MediaTypeHeaderValue("application/octet-stream") } };
        if (fileName is null)
            content.Add(part, "tape");
        else
            content.Add(part, "tape", fileName);
    }
}
