#include "cli/shared.hpp"

#include "measure/text.hpp"
#include "technique/calculation.hpp"

namespace po = boost::program_options;

namespace beadbook {
namespace {

using technique::Calculation;

std::string inputs_text(const Calculation &c) {
    std::string out;
    for (const auto &input : c.inputs) {
        const bool free = input.optional || !input.otherwise.empty();
        out += std::string(out.empty() ? "" : " ") + (free ? "[" : "") + input.name + (free ? "]" : "");
    }
    return out;
}

ExitCode list_all(const Args &args, Session &session) {
    nlohmann::json list = nlohmann::json::array();
    for (const auto &c : technique::calculations()) {
        if (args.flag("json"))
            list.push_back({{"name", c.name},
                            {"title", c.title},
                            {"formula", c.formula},
                            {"source", c.source},
                            {"inputs", inputs_text(c)}});
        else
            session.out << padded(c.name, 22) << c.title << "\n";
    }
    if (args.flag("json")) session.out << list.dump(2) << "\n";
    return ExitCode::done;
}

void describe(const Calculation &c, Session &session) {
    session.out << c.name << ": " << c.title << "\n  " << c.formula << "\n  [" << c.source << "]\n";
    for (const auto &input : c.inputs)
        session.out << "  " << input.name << ": " << input.help
                    << (input.words.empty() ? "" : " (" + listed(input.words, "or") + ")")
                    << (input.optional            ? "; optional"
                        : input.otherwise.empty() ? ""
                                                  : "; " + input.otherwise + " if not given")
                    << "\n";
    session.out << "Example:\n  beadbook compute " << c.name << " " << c.example << "\n";
}

ExitCode run_compute(const Args &args, Session &session) {
    if (args.positional().empty()) return list_all(args, session);
    const Calculation *c = technique::calculation(args.at(0));
    if (!c) {
        std::vector<std::string> names;
        for (const auto &one : technique::calculations()) names.push_back(one.name);
        throw UsageError("there is no calculation '" + shown(args.at(0)) + "'" +
                         did_you_mean(args.at(0), names) + " ('compute' alone lists them)");
    }
    if (args.positional().size() == 1) {
        describe(*c, session);
        return ExitCode::done;
    }
    const auto computed = technique::compute(*c, {args.positional().begin() + 1, args.positional().end()});
    if (args.flag("json")) {
        nlohmann::json results = nlohmann::json::object();
        for (const auto &r : computed.results) results[r.name] = r.text;
        session.out << nlohmann::json{{"calculation", c->name},
                                      {"formula", c->formula},
                                      {"source", c->source},
                                      {"inputs", computed.inputs.typed},
                                      {"results", results}}
                           .dump(2)
                    << "\n";
        return ExitCode::done;
    }
    session.out << c->title << "\n  " << c->formula << "  [" << c->source << "]\n ";
    for (const auto &input : c->inputs)
        if (computed.inputs.has(input.name))
            session.out << " " << input.name << " " << computed.inputs.word(input.name) << ";";
    session.out << "\n";
    for (const auto &r : computed.results)
        session.out << session.paint().strong(r.name + ": " + r.text) << "\n";
    return ExitCode::done;
}

} // namespace

Command compute_command() {
    return {"compute",
            "[NAME [INPUT=VALUE ...]]",
            "the technicians' arithmetic: amperes, unsharpness, IQI, decay, dwell, throat, arc ...",
            "Alone it lists the calculations; with a name it tells the inputs. It prints the formula, what "
            "was put in,\n"
            "and the source. Settings and estimates: no verdict rests on them.",
            "beadbook compute unsharpness focal=3mm distance=100cm behind=50cm",
            0,
            12,
            add_json,
            run_compute};
}

} // namespace beadbook
