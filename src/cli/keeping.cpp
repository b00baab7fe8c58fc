// Keeping the record: verify, seal, refresh, backup.
#include "operations/keeping.hpp"
#include "cli/deeds.hpp"
#include "measure/text.hpp"
#include "records/codecs/seal.hpp"
#include "records/files.hpp"
#include "render/json_keeping.hpp"

#include <filesystem>

namespace beadbook {
namespace {

/// "1 entry came after it".
std::string came_after(std::int64_t entries) {
    return counted(static_cast<std::size_t>(entries), "entry", "entries") + " came after it";
}

/// What `read` makes of a file; a refusal names it.
template <class Read>
auto read_from(const std::string &path, Read read) {
    const std::string text = read_file(path);
    try {
        return read(text);
    } catch (const Refusal &e) {
        throw DataError(shown(path) + ": " + e.what());
    }
}

/// The key file that is named; it must be there, or be asked for as a new one.
SigningKey key_in(const std::string &path, bool fresh, std::vector<std::string> &notes) {
    if (!fresh) {
        if (!std::filesystem::exists(path))
            throw DataError(shown(path) + ": there is no such file; --new-key makes a new key in it");
        return read_from(path, SigningKey::from_pem);
    }
    SigningKey key = SigningKey::fresh();
    write_new_file(path, key.pem(), Readers::owner);
    notes.push_back("a new key is in " + path +
                    ", which only you can read; keep it where nobody who writes to the record can take it");
    return key;
}

ExitCode run_seal(Call &call) {
    if (!call.has("key"))
        throw UsageError("which key signs? give --key KEY, and --new-key to make one there");
    std::vector<std::string> notes;
    Office &office = call.office();
    const SigningKey key = key_in(call.text("key"), call.has("new-key"), notes);
    const Seal seal = sealed(office, key, call.actor());
    write_new_file(call.at(0), codec::text_of(seal));
    return call.tell(SealWritten{call.at(0), seal}, notes);
}

/// The faults on the error stream; what was verified is told where it holds, and as JSON in any case.
template <class Result>
ExitCode tell_verified(Call &call, const Result &verified, const std::vector<std::string> &notes) {
    if (verified.holds() || call.json()) call.tell(verified, notes);
    for (const auto &fault : faults_of(verified))
        call.session().err << "beadbook: error: " << visible(fault) << "\n";
    return verified.holds() ? ExitCode::done : ExitCode::store;
}

ExitCode run_verify(Call &call) {
    VerifyRequest request{call.has("replay"), call.text("head")};
    if (call.has("head") && request.head.empty())
        throw UsageError("--head is empty; give the hash that was noted, or leave it out");
    if (call.joins_shops()) {
        for (const char *of_one : {"head", "seal", "signer"})
            if (call.has(of_one))
                throw UsageError("--" + std::string(of_one) + " is of one record; name that of one shop");
        return tell_verified(call, verify_shops(call.whole_shops(), request), {});
    }
    request.signer = call.text("signer");
    if (call.has("seal"))
        request.seal = read_from(call.text("seal"), codec::seal_from);
    else if (call.has("signer"))
        throw UsageError("--signer says whose a seal is; give it with --seal FILE");
    const Verified verified = verify(call.whole_office(Ledger::Mode::inspect), request);
    std::vector<std::string> notes;
    if (verified.seal && verified.seal->state == CheckedSeal::State::holds) {
        if (verified.seal->entries_after > 0)
            notes.push_back("the seal is on record, and " + came_after(verified.seal->entries_after));
        if (!verified.seal->signer_named)
            notes.push_back("whether the seal is the shop's hangs on its key; --signer KEY, known from "
                            "elsewhere, settles it");
    }
    if (verified.entries_after.value_or(0) > 0)
        notes.push_back("the head that was given is on record, and " + came_after(*verified.entries_after));
    return tell_verified(call, verified, notes);
}

/// SHOP=FILE.
ShopRecord shop_in(const std::string &word) {
    const std::size_t at = word.find('=');
    if (at == std::string::npos || at + 1 == word.size())
        throw UsageError("'" + shown(word) +
                         "' names no record of a shop; expected SHOP=FILE, such as north=north.db");
    return {word.substr(0, at), word.substr(at + 1)};
}

ExitCode run_join(Call &call) {
    std::vector<ShopRecord> shops;
    for (std::size_t i = 1; i < call.words().size(); ++i) shops.push_back(shop_in(call.at(i)));
    return call.tell(join_shops(call.catalogue(), call.at(0), shops));
}

ExitCode run_refresh(Call &call) { return call.tell(refresh_lines(call.whole_office(Ledger::Mode::write))); }

ExitCode run_backup(Call &call) {
    if (call.at(0) == "-") throw UsageError("a backup is a file and goes to no standard output; name it");
    return call.tell(back_up(call.office(), call.at(0)));
}

} // namespace

Deeds keeping_deeds() {
    return {{"verify", run_verify},
            {"seal", run_seal},
            {"refresh", run_refresh},
            {"join", run_join},
            {"backup", run_backup}};
}

} // namespace beadbook
