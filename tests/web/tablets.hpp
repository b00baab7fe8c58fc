#pragma once

#include "school.hpp"

#include "operations/accounts.hpp"

namespace beadbook::test {

/// The school's bench behind its proxy: one person a role, each with the same password. The welder is L1.
class Tablets : public School {
public:
    static constexpr const char *password = "ten letters and more";

    Tablets() {
        for (const auto &[name, role] :
             {std::pair("Tess", "technician"), {"Inge", "instructor"}, {"Kim", "keeper"}, {"L1", "welder"}}) {
            PersonRequest person;
            person.name = name;
            person.roles = {role};
            desk([&](Writing &w) { write_person(w, person); });
            account({name, password, {}});
        }
        BenchWorld behind = School::bench.world();
        behind.door = TabletDoor{"bench.shop.internal", 443, 8123, std::string(64, 'p')};
        behind.clock = [this] { return now; };
        door.emplace(std::move(behind));
    }

    void account(AccountRequest request) {
        if (request.by.empty()) request.by = "Kim";
        Book record(book(), Ledger::Mode::read);
        Catalogue catalogue(School::bench.world().outside);
        Office office(record, catalogue);
        AccountFile accounts(book());
        write_account(office, accounts, request);
    }
    Request asked(const std::string &method, const std::string &path, const std::string &cookie = "") const {
        Request out;
        out.method = method;
        out.path = path;
        out.host = "bench.shop.internal";
        out.proxy = std::string(64, 'p');
        out.address = "192.0.2.7";
        out.cookies = fields_in(cookie, ';');
        if (method != "GET") out.origin = "https://bench.shop.internal";
        return out;
    }
    Answer tried(const std::string &name, const std::string &word, const std::string &address = "192.0.2.7") {
        Request q = asked("POST", "/sign-in");
        q.form.add("name", name);
        q.form.add("password", word);
        q.address = address;
        return door->answer(q);
    }
    /// The cookie of somebody who signs in.
    std::string in(const std::string &name, const std::string &word = password) {
        const std::string set = header(tried(name, word), "Set-Cookie");
        return set.substr(0, set.find(';'));
    }
    Answer see(const std::string &cookie, const std::string &path) {
        return door->answer(asked("GET", path, cookie));
    }
    Answer send(const std::string &cookie, const std::string &path,
                const std::vector<std::pair<std::string, std::string>> &fields = {}) {
        const std::string page = see(cookie, "/person").body, before = "name=\"bench-token\" content=\"";
        Request q = asked("POST", path, cookie);
        if (const std::size_t at = page.find(before); at != std::string::npos)
            q.form.add("token", page.substr(at + before.size(), 64));
        for (const auto &[name, value] : fields) q.form.add(name, value);
        return door->answer(q);
    }

    std::chrono::seconds now{1000000};
    std::optional<Bench> door;
};

} // namespace beadbook::test
