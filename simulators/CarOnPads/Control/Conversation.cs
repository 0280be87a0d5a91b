using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using CarOnPads.Bench;
using CarOnPads.Runtime;

namespace CarOnPads.Control;

/// <summary>One line in, one line out.</summary>
static class Conversation
{
    static readonly JsonSerializerOptions s_json = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Does what the line says to the bay and returns the reply, without the line's end.</summary>
    public static string Answer(Bay bay, string line)
    {
        try
        {
            var deed = CommandTable.Parse(line);
            var reply = new JsonObject { ["ok"] = true, ["t"] = Math.Round(bay.Time, 4) };
            deed(bay, reply);
            return reply.ToJsonString(s_json);
        }
        catch (SimulatorException e)
        {
            return Refusal(e.Code, e.Message, e.Remedy);
        }
        catch (InvalidOperationException e)
        {
            return Refusal("CP-207", e.Message, "Lower the car or take the load off, then ask again.");
        }
    }

    static string Refusal(string code, string error, string remedy) =>
        new JsonObject { ["ok"] = false, ["code"] = code, ["error"] = error, ["remedy"] = remedy }.ToJsonString(s_json);
}
