/* Lets Debian's ippeveprinter run where nothing announces printers on the network: it will not start
 * without an Avahi daemon, and asks one for nothing but that. Preloaded by tests/src/real_printer.rs;
 * the printer itself is the real one. */
#include <stddef.h>

static int thing;

void *avahi_client_new(const void *poll, int flags, void *callback, void *data, int *error) {
    (void)poll, (void)flags, (void)callback, (void)data;
    if (error) *error = 0;
    return &thing;
}

int avahi_client_errno(void *client) { (void)client; return 0; }
const char *avahi_client_get_host_name_fqdn(void *client) { (void)client; return "localhost"; }
void *avahi_entry_group_new(void *client, void *callback, void *data) {
    (void)client, (void)callback, (void)data;
    return &thing;
}
int avahi_entry_group_add_service_strlst(void *group) { (void)group; return 0; }
int avahi_entry_group_add_service_subtype(void *group) { (void)group; return 0; }
int avahi_entry_group_commit(void *group) { (void)group; return 0; }
int avahi_entry_group_free(void *group) { (void)group; return 0; }
