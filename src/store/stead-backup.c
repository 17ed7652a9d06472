#include "config.h"
#include "store/stead-backup.h"
void
stead_backup_of_day (SteadStore *self)
{
}
