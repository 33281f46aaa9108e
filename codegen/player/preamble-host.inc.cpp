// Tables are plain memory on the desk; a chip reads them from its program memory.
#define IN_FLASH
#define READ_8(entry) (entry)
#define READ_16(entry) (entry)
#define READ_32(entry) (entry)
#define COUNT_OF(table) (sizeof(table) / sizeof((table)[0]))
//? clips
#define READ_CLIP(entry) (entry)
//.
//? eased
#define READ_EASING(entry) (entry)
//.
