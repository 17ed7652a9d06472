/* stead-import-kinds.c - the kinds of tables that can be imported. */
#include "config.h"

#include "answer/stead-import-private.h"

const SteadImportMethods *
stead_import_methods (SteadImportKind kind)
{
  switch (kind)
    {
    case STEAD_IMPORT_RECEIPTS: return &stead_import_receipts;
    case STEAD_IMPORT_FISH_LOG: return &stead_import_fish_log;
    case STEAD_IMPORT_TEMPERATURES: return &stead_import_temperatures;
    case STEAD_IMPORT_PICKS: return &stead_import_picks;
    case STEAD_IMPORT_WEIGHINGS: return &stead_import_weighings;
    case STEAD_IMPORT_COOLER: return &stead_import_cooler;
    case STEAD_IMPORT_POT: return &stead_import_pot;
    case STEAD_IMPORT_BANK: return &stead_import_bank;
    case STEAD_IMPORT_PEOPLE: return &stead_import_people;
    case STEAD_IMPORT_FLOCK_LOG:
    default: return &stead_import_flock_log;
    }
}
