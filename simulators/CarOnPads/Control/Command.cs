using System.Text.Json.Nodes;
using CarOnPads.Bench;

namespace CarOnPads.Control;

/// <summary>One word of the control channel.</summary>
/// <param name="Name">The value of <c>do</c>.</param>
/// <param name="Purpose">One line for people.</param>
/// <param name="Example">A complete command.</param>
/// <param name="Parse">Checks the fields and returns what to do; nothing happens yet.</param>
sealed record Command(string Name, string Purpose, string Example, Func<Arguments, Deed> Parse);

/// <summary>Does it, and adds what there is to say to the reply.</summary>
delegate void Deed(Bay bay, JsonObject reply);
